import { writeFileSync } from 'node:fs';
import { type ConversionConfig, toJsonSchema } from '@valibot/to-json-schema';
import { scenarioSchema } from '../jobs/scenario.ts';
import { setSchema } from '../sim/set/definition.ts';
import { inProject } from './files.ts';

/** The published schemas: file, and its text as generated from what the program itself validates with. */
export function publishedSchemas(): { path: string; text: string }[] {
  // no number in JSON is infinite, so that check has no counterpart
  const options: ConversionConfig = {
    typeMode: 'input',
    ignoreActions: ['finite'],
    overrideAction: ({ valibotAction, jsonSchema }) =>
      valibotAction.type === 'check_items' ? { ...jsonSchema, uniqueItems: true } : undefined,
  };
  const files = [
    { path: 'scenarios/scenario.schema.json', title: 'Freestroke job', schema: scenarioSchema },
    { path: 'models/bench-set/set.schema.json', title: 'Freestroke set definition', schema: setSchema },
  ];
  return files.map(({ path, title, schema }) => {
    const { $schema, ...rest } = toJsonSchema(schema, options);
    return { path, text: `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n` };
  });
}

if (process.argv[1]?.endsWith('schemas.ts')) {
  for (const { path, text } of publishedSchemas()) writeFileSync(inProject(path), text);
}
