/** One unit of a package: work that is set, on a page of its own. */
export interface Unit {
  /** Letters, digits and hyphens; tells units of one package apart. */
  readonly id: string;
  readonly title: string;
  /** Address of its page within the package. */
  readonly page: string;
  /** 0..100. */
  readonly passMark: number;
}

/** What a manifest is made of. files: every address within the package, the units' pages among them. */
export interface Contents {
  readonly id: string;
  readonly title: string;
  readonly units: readonly Unit[];
  readonly files: readonly string[];
}

/** Text as it stands between tags or in an attribute; characters that XML 1.0 cannot have are left out. */
export const escaped = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that XML forbids
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

/** An address of a file as a URL has it. */
const href = (path: string): string => escaped(path.split('/').map(encodeURIComponent).join('/'));

const fileLines = (files: readonly string[]): string =>
  files.map((path) => `      <file href="${href(path)}"/>`).join('\n');

/** Files that all units share, besides their own pages. */
function sharedFiles({ units, files }: Contents): string[] {
  const pages = new Set(units.map(({ page }) => page));
  return files.filter((path) => !pages.has(path));
}

/** What the two editions of SCORM write differently. */
interface Edition {
  /** Name spaces, as attributes of the manifest. */
  readonly spaces: string;
  readonly version: string;
  /** Attribute that says what a resource is. */
  readonly typed: string;
  /** What an item has after its title. */
  readonly item: (unit: Unit) => string;
  /** What the organization has after its items. */
  readonly end: string;
}

/** imsmanifest.xml: an item and a page for each unit, and the files that all of them share. */
function manifest(contents: Contents, { spaces, version, typed, item, end }: Edition): string {
  const { id, title, units } = contents;
  const items = units.map(
    (unit) => `      <item identifier="item-${unit.id}" identifierref="page-${unit.id}">
        <title>${escaped(unit.title)}</title>
${item(unit)}
      </item>
`,
  );
  const pages = units.map(
    (
      unit,
    ) => `    <resource identifier="page-${unit.id}" type="webcontent" ${typed}="sco" href="${href(unit.page)}">
      <file href="${href(unit.page)}"/>
      <dependency identifierref="shared"/>
    </resource>
`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>
<manifest identifier="${escaped(id)}" version="1.0" ${spaces}>
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>${version}</schemaversion>
  </metadata>
  <organizations default="work">
    <organization identifier="work">
      <title>${escaped(title)}</title>
${items.join('')}${end}    </organization>
  </organizations>
  <resources>
${pages.join('')}    <resource identifier="shared" type="webcontent" ${typed}="asset">
${fileLines(sharedFiles(contents))}
    </resource>
  </resources>
</manifest>
`;
}

/** imsmanifest.xml of a package for SCORM 1.2 (ADL SCORM 1.2 Content Aggregation Model). */
export const manifest12 = (contents: Contents): string =>
  manifest(contents, {
    spaces:
      'xmlns="http://www.imsproject.org/xsd/imscp_rootv1p1p2" xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_rootv1p2"',
    version: '1.2',
    typed: 'adlcp:scormtype',
    item: ({ passMark }) => `        <adlcp:masteryscore>${Math.round(passMark)}</adlcp:masteryscore>`,
    end: '',
  });

/** imsmanifest.xml of a package for SCORM 2004, 4th edition: each unit is passed by its own measure. */
export const manifest2004 = (contents: Contents): string =>
  manifest(contents, {
    spaces:
      'xmlns="http://www.imsglobal.org/xsd/imscp_v1p1" xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_v1p3" xmlns:imsss="http://www.imsglobal.org/xsd/imsss"',
    version: '2004 4th Edition',
    typed: 'adlcp:scormType',
    item: ({ passMark }) => `        <imsss:sequencing>
          <imsss:objectives>
            <imsss:primaryObjective objectiveID="whole" satisfiedByMeasure="true">
              <imsss:minNormalizedMeasure>${(passMark / 100).toFixed(4)}</imsss:minNormalizedMeasure>
            </imsss:primaryObjective>
          </imsss:objectives>
          <imsss:deliveryControls completionSetByContent="true" objectiveSetByContent="true"/>
        </imsss:sequencing>`,
    end: `      <imsss:sequencing>
        <imsss:controlMode choice="true" flow="true"/>
      </imsss:sequencing>
`,
  });

/** cmi5.xml of a package for cmi5 (AICC cmi5, course structure v1): one assignable unit a job. */
export function courseStructure(contents: Contents, base: string): string {
  const { id, title, units } = contents;
  const lang = (text: string): string => `<langstring lang="en">${escaped(text)}</langstring>`;
  const list = units.map(
    (
      unit,
    ) => `  <au id="${escaped(`${base}/${id}/${unit.id}`)}" moveOn="CompletedAndPassed" masteryScore="${(unit.passMark / 100).toFixed(4)}" launchMethod="AnyWindow">
    <title>${lang(unit.title)}</title>
    <description>${lang(unit.title)}</description>
    <url>${href(unit.page)}</url>
  </au>`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>
<courseStructure xmlns="https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd">
  <course id="${escaped(`${base}/${id}`)}">
    <title>${lang(title)}</title>
    <description>${lang(title)}</description>
  </course>
${list.join('\n')}
</courseStructure>
`;
}
