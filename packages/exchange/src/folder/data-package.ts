/** `datapackage.json`: the program folder described for any tool that reads Data Packages (version 2, https://datapackage.org). */
import {
  ok,
  type Problem,
  type Program,
  type ProgramSettings,
  RECORD_KINDS,
  type RecordKind,
  type Result,
  settingsSchema,
  tables,
} from '@duskwatch/core';
import { type TableSchema, tableSchema } from './table-schema.ts';

export const DATA_PACKAGE_FILE = 'datapackage.json';

export interface DataPackage {
  readonly $schema: string;
  readonly name: string;
  readonly title: string;
  /** Ours: what the standard has no property for. */
  readonly duskwatch: {
    readonly invented: boolean;
    readonly pinnedOn: string | null;
    /** How the coordinator is reached; written only where it is said. */
    readonly contact?: string;
    /** Written only where the program chose: its region, and rules of the catalogue by their ids. */
    readonly region?: string;
    readonly chosenRules?: readonly string[];
    /** Rules of the catalogue that the program does not go by. */
    readonly rulesOff?: readonly { readonly ruleId: string; readonly reason: string }[];
  };
  readonly resources: readonly Resource[];
}

interface Resource {
  readonly name: string;
  readonly type: 'table';
  readonly path: string;
  readonly description: string;
  readonly format: 'csv';
  readonly mediatype: 'text/csv';
  readonly encoding: 'utf-8';
  readonly schema: TableSchema;
}

/** Tables that a folder of this program has: those with rows, and the three that make it a program. */
export const tablesToWrite = (program: Program): RecordKind[] =>
  RECORD_KINDS.filter((kind) => tables[kind].required || program[kind].length > 0);

export function dataPackage(program: Program): DataPackage {
  const { name, invented, pinnedOn, contact, region, chosenRules, rulesOff } = program.settings;
  const chosen = {
    ...(contact ? { contact } : {}),
    ...(region ? { region } : {}),
    ...(chosenRules?.length ? { chosenRules } : {}),
    ...(rulesOff?.length ? { rulesOff } : {}),
  };
  return {
    $schema: 'https://datapackage.org/profiles/2.0/datapackage.json',
    name: slug(name),
    title: name,
    duskwatch: { invented, pinnedOn, ...chosen },
    resources: tablesToWrite(program).map((kind) => resource(kind, program)),
  };
}

function resource(kind: RecordKind, program: Program): Resource {
  return {
    name: kind,
    type: 'table',
    path: tables[kind].file,
    description: tables[kind].about,
    format: 'csv',
    mediatype: 'text/csv',
    encoding: 'utf-8',
    schema: tableSchema(kind, program[kind]),
  };
}

/** Package names are plain words that are safe in a URL. */
function slug(title: string): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return plain === '' ? 'program' : plain;
}

/** The program's settings from `datapackage.json`; all that it leaves out is taken from `fallback`. */
export function settingsFrom(text: string, fallback: ProgramSettings): Result<ProgramSettings> {
  let written: unknown;
  try {
    written = JSON.parse(text);
  } catch (error) {
    return refused([problem('', (error as Error).message, 'valid JSON', 'Correct the file, or remove it: it is optional.')]);
  }
  if (!isObject(written)) {
    return refused([
      problem('', 'no JSON object', 'a Data Package descriptor', 'Correct the file, or remove it: it is optional.'),
    ]);
  }
  const own = isObject(written.duskwatch) ? written.duskwatch : {};
  const parsed = settingsSchema.safeParse({
    name: written.title ?? written.name ?? fallback.name,
    invented: own.invented ?? fallback.invented,
    pinnedOn: own.pinnedOn ?? fallback.pinnedOn,
    contact: own.contact ?? fallback.contact,
    region: own.region ?? fallback.region,
    chosenRules: own.chosenRules ?? fallback.chosenRules,
    rulesOff: own.rulesOff ?? fallback.rulesOff,
  });
  if (parsed.success) return ok(parsed.data);
  return refused(
    parsed.error.issues.map(({ path, message }) => {
      const key = String(path[0]);
      const at = key === 'name' ? 'title' : `duskwatch.${key}`;
      const got = key === 'name' ? (written.title ?? written.name) : own[key];
      return problem(at, JSON.stringify(got) ?? 'nothing', EXPECTED[key] ?? message, 'Correct it.');
    }),
  );
}

const EXPECTED: Readonly<Record<string, string>> = {
  name: 'a title of 1 to 120 characters',
  invented: 'true or false',
  pinnedOn: 'null or a calendar day as YYYY-MM-DD',
  contact: 'a text of at most 2,000 characters',
  region: 'a region as the catalogue writes it, or its own words',
  chosenRules: 'a list of rule ids of the catalogue',
  rulesOff: 'a list of { "ruleId", "reason" }, each a rule of the catalogue and why it is off',
};

const refused = (problems: Problem[]): Result<never> => ({ ok: false, problems });

const problem = (column: string, got: string, expected: string, fix: string): Problem => ({
  where: column === '' ? { file: DATA_PACKAGE_FILE } : { file: DATA_PACKAGE_FILE, column },
  got,
  expected,
  fix,
});

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
