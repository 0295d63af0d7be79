import { writeFileSync } from 'node:fs';
import { type ConversionConfig, toJsonSchema } from '@valibot/to-json-schema';
import { faultsSchema } from '../jobs/faults.ts';
import { scenarioSchema } from '../jobs/scenario.ts';
import { setSchema } from '../sim/set/definition.ts';
import { inProject } from './files.ts';

/** The published schemas: file, and its text as generated from what the program itself validates with. */
export function publishedSchemas(): { path: string; text: string }[] {
  // no number in JSON is infinite, and relations between numbers have no counterpart there
  const options: ConversionConfig = {
    typeMode: 'input',
    ignoreActions: ['finite', 'check'],
    overrideAction: ({ valibotAction, jsonSchema }) =>
      valibotAction.type === 'check_items' ? { ...jsonSchema, uniqueItems: true } : undefined,
  };
  const files = [
    { path: 'scenarios/scenario.schema.json', title: 'Freestroke job', schema: scenarioSchema },
    { path: 'models/bench-set/set.schema.json', title: 'Freestroke set definition', schema: setSchema },
    { path: 'models/bench-set/faults.schema.json', title: 'Freestroke fault kinds', schema: faultsSchema },
  ];
  return files.map(({ path, title, schema }) => {
    const { $schema, ...rest } = toJsonSchema(schema, options);
    return { path, text: `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n` };
  });
}

if (process.argv[1]?.endsWith('schemas.ts')) {
  for (const { path, text } of publishedSchemas()) writeFileSync(inProject(path), text);
}
