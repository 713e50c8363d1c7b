import { describe, expect, it } from 'vitest';
import type { Fault } from '../base/fault.ts';
import type { Problem } from '../base/problem.ts';
import { catalogueWords } from '../catalogue/index.ts';
import { CellFault, cellReader } from '../records/cells.ts';
import { checkProgram } from '../records/check-program.ts';
import { leftEmpty } from '../records/left-empty.ts';
import { emptyProgram, type Program, RECORD_KINDS } from '../records/program.ts';
import type { CheckRecord, FieldRecord, SampleRecord, TrapRecord } from '../records/schema.ts';
import { tables } from '../records/tables.ts';
import { MAX_VISITS } from '../records/visits.ts';
import { namesByCatalogue } from './catalogue-names.ts';
import { faultSpanish } from './problems.es.ts';
import { problemInWords } from './problems.ts';

const field: FieldRecord = {
  fieldId: 'north',
  farm: 'Hill',
  name: 'North',
  crop: 'sweet-corn',
  growthHabit: null,
  plantedOn: '2026-06-01',
  harvestOn: '2026-05-01',
  latitude: null,
  longitude: null,
  timeZone: 'Nowhere',
  weatherSource: 'attic',
};
const trap: TrapRecord = {
  trapId: 'T1',
  station: 'Oak',
  insect: 'helicoverpa-zee',
  design: 'mesh-cone',
  latitude: null,
  longitude: null,
  hungOn: '2026-06-10',
  takenDownOn: '2026-07-01',
  informs: ['nort', 'elsewhere'],
};
const check: CheckRecord = {
  trapId: 'T1',
  checkedOn: '2026-06-01',
  visit: 1,
  targetCount: null,
  otherCount: null,
  condition: 'fit',
  emptied: true,
  note: null,
};
const sample: SampleRecord = {
  fieldId: 'north',
  insect: 'moth',
  sampledOn: '2026-06-20',
  kind: 'ears',
  unitsExamined: 20,
  unitsInfested: 30,
  totalCount: null,
};
const weather = {
  sourceId: 'yard',
  date: '2026-06-01',
  tminC: 20,
  tmaxC: 10,
  precipitationMm: null,
  forecastMadeOn: '2026-06-02',
};

const faulty: Partial<Program> = {
  fields: [field, field],
  traps: [trap],
  checks: [
    check,
    check,
    { ...check, visit: 7, unfitReason: 'full' },
    { ...check, checkedOn: '2026-08-01', visit: MAX_VISITS + 1 },
    { ...check, trapId: 'T9' },
  ],
  stages: [{ fieldId: 'north', observedOn: '2026-06-20', stage: 'silky' }],
  samples: [sample, { ...sample, sampledOn: '2026-06-21', unitsInfested: 3, byPlace: ['1/10', '1/10'] }],
  decisions: [
    {
      fieldId: 'north',
      insect: 'helicoverpa-zea',
      decidedOn: '2026-07-02',
      decision: 'not-treated',
      reason: 'other',
      note: ' ',
    },
  ],
  treatments: [
    {
      fieldId: 'north',
      insect: 'helicoverpa-zea',
      appliedOn: '2026-07-02',
      product: 'Product A (invented)',
      protectsDays: null,
      reentryHours: null,
      preharvestDays: null,
      productUnknown: true,
      rate: 2,
    },
  ],
  sources: [{ ...leftEmpty('sources'), sourceId: 'yard', fillFrom: 'yard', service: 'noaa-daily', fetching: true }],
  weather: [weather],
  stock: [
    {
      item: 'trap',
      of: 'bucket',
      onHand: 2,
      wornOut: 3,
      openedOn: null,
      expiresOn: null,
    } as Program['stock'][number],
  ],
};

/** Every way to fill in a box wrongly, for every column of every kind. */
function unreadableBoxes(): Problem[] {
  const written = [
    '',
    'x',
    '3,5',
    '3.5',
    '-4',
    '999999999',
    '2026-02-31',
    '7/12/2026',
    '12/07/2026',
    '46000',
    'bukket',
    'a;b',
    'y'.repeat(5000),
  ];
  return RECORD_KINDS.flatMap((kind) =>
    tables[kind].columns.flatMap((column) =>
      written.flatMap((text): Problem[] => {
        const read = cellReader(column, { decimalComma: false })(text);
        if (!(read instanceof CellFault)) return [];
        expect(read.fault, `${kind}.${column.name}: ${text}`).not.toBeNull();
        return [{ where: {}, got: text, expected: read.expected, fix: read.fix, fault: read.fault! }];
      }),
    ),
  );
}

const ofServer: readonly Fault[] = [
  { kind: 'may-not-write', role: 'scout' },
  { kind: 'other-farm' },
  { kind: 'future-day', last: '2026-07-16' },
  { kind: 'too-large' },
  { kind: 'photo-type', types: ['image/jpeg'] },
  ...(['busy', 'away', 'disk-full', 'disk-fault', 'read-only', 'damaged'] as const).map(
    (trouble): Fault => ({ kind: 'storage', trouble }),
  ),
];

describe('what is wrong with what somebody wrote', () => {
  const problems = [
    ...unreadableBoxes(),
    ...checkProgram({ ...emptyProgram(), ...faulty } as Program, { words: catalogueWords }),
    ...ofServer.map((fault): Problem => ({ where: {}, got: '', expected: 'something', fix: 'Mend it.', fault })),
  ];

  it('can be any of the faults there are words for', () => {
    const met = new Set(problems.map(({ fault }) => fault?.kind));
    expect([...Object.keys(faultSpanish)].filter((kind) => !met.has(kind as Fault['kind']))).toEqual([]);
    expect(problems.length).toBeGreaterThan(200);
  });

  it('is said in Spanish wherever a form, a round or the server says it in English', () => {
    for (const problem of problems) {
      expect(problem.fault, `${problem.expected} ${problem.fix}`).toBeDefined();
      const english = problemInWords(problem, 'en', namesByCatalogue('en'));
      const spanish = problemInWords(problem, 'es', namesByCatalogue('es'));
      expect(english).toEqual({ expected: problem.expected, fix: problem.fix, language: 'en' });
      expect(spanish.language).toBe('es');
      expect(spanish.fix).not.toBe(english.fix);
      expect(`${spanish.expected} ${spanish.fix}`).not.toMatch(/undefined|null|NaN|\b(the|of|or|write|day|trap|field)\b/i);
      expect(spanish.fix).toMatch(/[.?]$/);
    }
  });

  it('stays in English, and says so, where only English has words', () => {
    const other = { where: {}, got: '', expected: 'another revision', fix: 'Send it anew.' };
    expect(problemInWords(other, 'es', namesByCatalogue('es'))).toEqual({
      expected: 'another revision',
      fix: 'Send it anew.',
      language: 'en',
    });
  });
});
