import { type CheckRecord, emptyProgram, type FieldRecord, leftEmpty, type Program, type TrapRecord } from '@duskwatch/core';

/** Farms as growers name them; the words of their records tell whose each is. */
export const OWN = 'Alder farm';
export const OTHER = 'Birch farm';

/** Two farms: one trap over each, one between them. Everything of the second is told by its words. Invented. */
export const twoFarms: Program = {
  ...emptyProgram({ name: 'Vale', invented: true, pinnedOn: '2026-07-15' }),
  fields: [field('alder-1', OWN, 44.111111), field('birch-1', OTHER, 45.987654)],
  stages: ['alder-1', 'birch-1'].map((fieldId) => ({ fieldId, observedOn: '2026-07-12', stage: 'silk' })),
  traps: [trap('TA', 'gatepost', 44.122222, 'alder-1'), trap('TB', 'birchwood', 45.876543, 'birch-1'), between()],
  lures: ['TA', 'TB', 'TM'].map((trapId) => ({ trapId, placedOn: '2026-07-01', lifeDays: 28 })),
  checks: [check('TA', 'by the hedge', 30), check('TB', 'ask the Birchwoods first', 61), check('TM', 'windy', 4)],
  skips: ['TA', 'TB'].map((trapId) => ({
    trapId,
    skippedOn: '2026-07-11',
    reason: 'locked',
    note: trapId === 'TA' ? 'key with the alders' : 'key with the birches',
  })),
  weather: ['alder-yard', 'birch-yard'].map((sourceId) => ({
    sourceId,
    date: '2026-07-14',
    tminC: 14,
    tmaxC: 27,
    precipitationMm: null,
  })),
  samples: ['alder-1', 'birch-1'].map((fieldId) => ({
    fieldId,
    insect: 'helicoverpa-zea',
    sampledOn: '2026-07-13',
    kind: 'ears',
    unitsExamined: 50,
    unitsInfested: 2,
    totalCount: null,
  })),
  treatments: ['alder-1', 'birch-1'].map((fieldId) => ({
    fieldId,
    insect: 'helicoverpa-zea',
    appliedOn: '2026-07-03',
    product: fieldId === 'alder-1' ? 'elder mixture' : 'birch mixture',
    protectsDays: 3,
    reentryHours: 12,
    preharvestDays: 2,
  })),
  decisions: ['alder-1', 'birch-1'].map((fieldId) => ({
    fieldId,
    insect: 'helicoverpa-zea',
    decidedOn: '2026-07-10',
    decision: 'not-treated',
    reason: 'other',
    note: fieldId === 'alder-1' ? 'elder reason' : 'birch reason',
  })),
  seasons: [
    {
      ...leftEmpty('seasons'),
      season: 2027,
      insects: ['helicoverpa-zea'],
      crops: [],
      fields: ['birch-1'],
      checkWeekdays: [],
      currency: 'USD',
    },
  ],
  plans: [
    {
      ...leftEmpty('plans'),
      season: 2027,
      insect: 'helicoverpa-zea',
      area: 'birch-1',
      traps: 3,
      hangOn: '2027-06-10',
      note: 'by the birches',
    },
  ],
  prices: [{ item: 'lure', of: 'helicoverpa-zea', price: 8123.25, currency: 'USD', note: 'birch bargain' }],
  stock: [
    {
      stockId: 'birch shed',
      item: 'trap',
      of: 'mesh-cone',
      onHand: 3,
      countedOn: '2026-07-01',
      wornOut: null,
      openedOn: null,
      expiresOn: null,
      storage: 'birch shed',
    },
  ],
};

/** What things cost: for the coordinator alone. */
export const PRICES = /8123\.25|bargain/;

/** What of the second farm nobody may read who is a grower of the first. */
export const SECRETS = /birch|"TB[|"]|45\.9876|45\.8765|-62\.5/i;
/** What of either farm no reader may read. */
export const PLACES = /birch|alder|gatepost|midpost|"T[ABM][|"]|hedge|windy|mixture|4[45]\.\d{4}|-62\.\d/i;

function field(fieldId: string, farm: string, latitude: number): FieldRecord {
  return {
    fieldId,
    farm,
    name: `${farm}, first piece`,
    crop: 'sweet-corn',
    growthHabit: null,
    plantedOn: '2026-05-10',
    harvestOn: '2026-08-10',
    latitude,
    longitude: farm === OWN ? -62.4 : -62.5,
    timeZone: 'America/Halifax',
    weatherSource: farm === OWN ? 'alder-yard' : 'birch-yard',
  };
}

function trap(trapId: string, station: string, latitude: number, ...informs: string[]): TrapRecord {
  return {
    trapId,
    station,
    insect: 'helicoverpa-zea',
    design: 'mesh-cone',
    latitude,
    longitude: trapId === 'TB' ? -62.5 : -62.4,
    hungOn: '2026-07-01',
    takenDownOn: null,
    informs,
  };
}

function between(): TrapRecord {
  return trap('TM', 'midpost', 44.133333, 'alder-1', 'birch-1');
}

function check(trapId: string, note: string, targetCount: number): CheckRecord {
  return {
    trapId,
    checkedOn: '2026-07-14',
    visit: 1,
    targetCount,
    otherCount: 0,
    condition: 'fit',
    emptied: true,
    note,
  };
}
