/** What a person types into the search, found in the records that this person may see. */
import { z } from 'zod';
import { foldText, matchOf, typedWords } from '../base/find.ts';
import type { Shape } from '../base/shape.ts';
import { insectById } from '../catalogue/look-up.ts';
import { localTextSchema } from '../catalogue/schema.ts';
import { type Person, ROLES } from '../people/person.ts';
import type { Program } from '../records/program.ts';
import { isoDay } from '../records/schema.ts';

const hitSchema = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('field'), fieldId: z.string(), name: z.string(), farm: z.string(), crop: z.string() }),
    z.object({ kind: z.literal('farm'), farm: z.string(), fields: z.int().describe('How many fields it has here.') }),
    z.object({
      kind: z.literal('trap'),
      trapId: z.string(),
      station: z.string(),
      insect: z.string(),
      takenDownOn: isoDay.nullable(),
    }),
    z.object({ kind: z.literal('insect'), insect: z.string(), scientificName: z.string(), commonName: localTextSchema }),
    z.object({ kind: z.literal('person'), name: z.string(), role: z.enum(ROLES) }),
    z.object({
      kind: z.literal('record'),
      of: z.enum(['checks', 'skips', 'treatments', 'decisions']),
      on: isoDay,
      trapId: z.string().nullable(),
      fieldId: z.string().nullable().describe('One of `trapId` and `fieldId` is not null.'),
      text: z.string().describe('What was written: a note, or the product of a treatment.'),
    }),
  ])
  .meta({ id: 'SearchHit' });
export type SearchHit = Shape<typeof hitSchema>;

export const searchSchema = z
  .object({
    hits: z.array(hitSchema).describe(`Kind by kind, the best of each first, at most so many of each that they fit a screen.`),
    of: z.int().describe('How many there are in all.'),
  })
  .meta({ id: 'SearchAnswer' });
export type SearchView = Shape<typeof searchSchema>;

/** Of each kind. */
const MOST = 6;

interface Entry {
  readonly hit: SearchHit;
  /** Folded; the proper name first. */
  readonly names: readonly string[];
  /** Among equally good ones: a name, of traps those that hang before others; of what was written the day. */
  readonly order: string;
}

/**
 * Of a program as it is scoped to a person. `people` are given only to those who may see them.
 */
export function searchView(program: Program, people: readonly Pick<Person, 'name' | 'role'>[], typed: string): SearchView {
  const words = typedWords(typed);
  if (words.length === 0) return { hits: [], of: 0 };
  const persons = people.map(({ name, role }) => entry({ kind: 'person', name, role }, [name], name));
  const groups = [...entriesOf(program), persons].map((entries) => found(entries, words));
  return {
    hits: groups.flatMap((group) => group.slice(0, MOST).map(({ hit }) => hit)),
    of: groups.reduce((sum, group) => sum + group.length, 0),
  };
}

function found(entries: readonly Entry[], words: readonly string[]): Entry[] {
  const matches = entries.flatMap((each) => {
    const match = matchOf(words, each.names);
    return match === null ? [] : [{ each, match }];
  });
  return matches.sort((a, b) => a.match - b.match || inOrder(a.each, b.each)).map(({ each }) => each);
}

const { compare } = new Intl.Collator('en', { numeric: true });

const inOrder = (a: Entry, b: Entry) => (a.hit.kind === 'record' ? newestFirst(a, b) : compare(a.order, b.order));

const entry = (hit: SearchHit, names: readonly string[], order: string): Entry => ({ hit, names: names.map(foldText), order });

/** Folded once for each list of records: a new check leaves the names of fields and traps as they are. */
function once<Rows extends object>(make: (rows: Rows) => readonly Entry[]): (rows: Rows) => readonly Entry[] {
  const known = new WeakMap<Rows, readonly Entry[]>();
  return (rows) => {
    const made = known.get(rows) ?? make(rows);
    known.set(rows, made);
    return made;
  };
}

const entriesOf = (program: Program): (readonly Entry[])[] => [
  ofFields(program.fields),
  ofFarms(program.fields),
  ofTraps(program.traps),
  ofInsects(program.traps),
  [...ofChecks(program.checks), ...ofOthers(program)],
];

const ofFields = once((fields: Program['fields']) =>
  fields.map(({ fieldId, name, farm, crop }) => entry({ kind: 'field', fieldId, name, farm, crop }, [name, fieldId, farm], name)),
);

const ofFarms = once((fields: Program['fields']) => {
  const counts = new Map<string, number>();
  for (const { farm } of fields) counts.set(farm, (counts.get(farm) ?? 0) + 1);
  return [...counts].map(([farm, count]) => entry({ kind: 'farm', farm, fields: count }, [farm], farm));
});

const ofTraps = once((traps: Program['traps']) =>
  traps.map(({ trapId, station, insect, takenDownOn }) =>
    entry(
      { kind: 'trap', trapId, station, insect, takenDownOn },
      [trapId, station, ...namesOfInsect(insect)],
      `${takenDownOn === null ? 0 : 1} ${trapId}`,
    ),
  ),
);

const ofInsects = once((traps: Program['traps']) =>
  [...new Set(traps.map(({ insect }) => insect))].map((insect) => {
    const known = insectById(insect);
    const scientificName = known?.scientificName ?? insect;
    const commonName = known?.commonName ?? { en: insect, es: insect };
    return entry({ kind: 'insect', insect, scientificName, commonName }, namesOfInsect(insect), scientificName);
  }),
);

function namesOfInsect(insect: string): string[] {
  const known = insectById(insect);
  return known ? [known.commonName.en, known.commonName.es, known.scientificName] : [insect];
}

// What people wrote in words.
const ofChecks = once((checks: Program['checks']) =>
  checks.flatMap(({ trapId, checkedOn, note }) => written('checks', checkedOn, { trapId, fieldId: null }, note)),
);

const ofOthers = ({ skips, treatments, decisions }: Program): Entry[] => [
  ...skips.flatMap(({ trapId, skippedOn, note }) => written('skips', skippedOn, { trapId, fieldId: null }, note)),
  ...treatments.flatMap(({ fieldId, appliedOn, product }) =>
    written('treatments', appliedOn, { trapId: null, fieldId }, product),
  ),
  ...decisions.flatMap(({ fieldId, decidedOn, note }) => written('decisions', decidedOn, { trapId: null, fieldId }, note)),
];

type Written = Extract<SearchHit, { kind: 'record' }>;

const written = (of: Written['of'], on: string, where: Pick<Written, 'trapId' | 'fieldId'>, text: string | null): Entry[] =>
  text ? [entry({ kind: 'record', of, on, ...where, text }, [text], on)] : [];

const newestFirst = (a: Entry, b: Entry) => (a.order < b.order ? 1 : a.order > b.order ? -1 : 0);
