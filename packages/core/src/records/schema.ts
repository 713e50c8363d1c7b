/** What people write down. One Zod schema per kind of record serves the API, storage and import. */
import { z } from 'zod';
import { parseDay } from '../base/day.ts';

export const isoDay = z
  .string()
  .refine((text) => parseDay(text) !== null, { error: 'expected a calendar day as YYYY-MM-DD' })
  .meta({ format: 'date', example: '2026-07-15' });
/** `;` parts the ids of a list and `|` the parts of a natural key, so an id holds neither. */
const id = z
  .string()
  .trim()
  .min(1)
  .max(80)
  .regex(/^[^;|]*$/, { error: 'expected no ; or | in an id' });
const latitude = z.number().min(-90).max(90);
const longitude = z.number().min(-180).max(180);
const count = z.int().min(0).max(1_000_000);
const text = z
  .string()
  .max(2_000)
  .refine((value) => !value.includes('\0'), { error: 'expected text without NUL characters' });

/** ISO 4217. */
const currency = z
  .string()
  .length(3)
  .regex(/^[A-Z]{3}$/, { error: 'expected a currency as three capital letters, such as USD' });

/** A photo is named by the SHA-256 of its bytes, in lower-case hexadecimal, so that a name can hold one photo only. */
export const photoSchema = z
  .string()
  .length(64)
  .regex(/^[0-9a-f]+$/, { error: 'expected a SHA-256 in lower-case hexadecimal' });

export const TRAP_DESIGNS = ['bucket', 'mesh-cone', 'wire-cone', 'delta', 'other'] as const;
export const CONDITIONS = ['fit', 'doubtful', 'unfit'] as const;
/** Why a trap was unfit. `flooded`: under water, or full of it. */
export const UNFIT_REASONS = ['down', 'full', 'lure-missing', 'stolen', 'flooded', 'other'] as const;
export type UnfitReason = (typeof UNFIT_REASONS)[number];
export type TrapDesign = (typeof TRAP_DESIGNS)[number];
export type Condition = (typeof CONDITIONS)[number];
export const trapDesignSchema = z.enum(TRAP_DESIGNS);
export const conditionSchema = z.enum(CONDITIONS);

export const fieldSchema = z.object({
  fieldId: id,
  farm: id,
  name: z.string().trim().min(1).max(120),
  /** Slug of a crop: `sweet-corn`, `tomato`, `squash`, … Unknown crops are allowed and have no rules. */
  crop: id,
  /** `bush` or `vining` where a rule tells them apart; free otherwise. */
  growthHabit: id.nullable(),
  plantedOn: isoDay.nullable(),
  harvestOn: isoDay.nullable(),
  latitude: latitude.nullable(),
  longitude: longitude.nullable(),
  /** IANA zone, e.g. `America/Halifax`. */
  timeZone: id.nullable(),
  /** Which weather source informs the field; needed only where a program has several. */
  weatherSource: id.nullable(),
});

export const stageSchema = z.object({
  fieldId: id,
  observedOn: isoDay,
  /** A plain word of the crop (`silk`) or a BBCH code (`63`), as written. */
  stage: id,
});

export const trapSchema = z.object({
  trapId: id,
  station: id,
  /** Slug of the scientific name: `helicoverpa-zea`. */
  insect: id,
  design: z.enum(TRAP_DESIGNS),
  latitude: latitude.nullable(),
  longitude: longitude.nullable(),
  hungOn: isoDay,
  takenDownOn: isoDay.nullable(),
  /** Fields whose advice rests on this trap. */
  informs: z.array(id),
});

export const lureSchema = z.object({
  trapId: id,
  placedOn: isoDay,
  /** Days the maker says the lure lasts; null when not known. */
  lifeDays: z.int().min(1).max(400).nullable(),
});

export const checkSchema = z.object({
  trapId: id,
  checkedOn: isoDay,
  /** Second and later visits to one trap on one day are 2, 3, …; otherwise 1. */
  visit: z.int().min(1).max(99),
  /** Moths of the target species. Null only at an unfit visit: not counted is not zero. */
  targetCount: count.nullable(),
  /** Moths of other species, kept apart; null when nobody counted them. */
  otherCount: count.nullable(),
  condition: z.enum(CONDITIONS),
  /** False when the moths were left in the trap, so that the next count holds them too. */
  emptied: z.boolean(),
  /** Only at an unfit visit; null, or left out, when nobody said why. */
  unfitReason: z.enum(UNFIT_REASONS).nullable().optional(),
  note: text.nullable(),
  /** A photo taken at the visit, by its name; may be left out. */
  photo: photoSchema.nullable().optional(),
});

/** Why nobody checked a trap that was due. `keep-out`: the re-entry time of a treatment; `water`: no way through it. */
export const SKIP_REASONS = ['keep-out', 'water', 'locked', 'no-time', 'not-found', 'unsafe', 'other'] as const;
export type SkipReason = (typeof SKIP_REASONS)[number];

/** A trap that was passed by on a round. It is no visit: nothing about moths or nights follows from it. */
export const skipSchema = z.object({
  trapId: id,
  skippedOn: isoDay,
  reason: z.enum(SKIP_REASONS),
  note: text.nullable(),
});

/** Mean daily extremes of one month at a weather source over many years, as its service publishes them. */
export const normalSchema = z.object({
  sourceId: id,
  /** 1: January. */
  month: z.int().min(1).max(12),
  tminC: z.number().min(-90).max(60),
  tmaxC: z.number().min(-90).max(60),
});

/** What the days of a weather source are: measured at a place, estimated for a square of a grid, or worked out afterwards. */
export const WEATHER_SOURCE_KINDS = ['station', 'grid', 'reanalysis'] as const;
export type WeatherSourceKind = (typeof WEATHER_SOURCE_KINDS)[number];
/** Where days are fetched from: open services, an address with days in it, or a folder that is watched. */
export const WEATHER_SERVICES = ['noaa-daily', 'us-forecast', 'norway-forecast', 'open-meteo', 'address', 'folder'] as const;
export type WeatherService = (typeof WEATHER_SERVICES)[number];

/** A weather source: where it is, what its days are, and where they come from. A source of weather may do without. */
export const sourceSchema = z.object({
  sourceId: id,
  name: text.nullable(),
  /** Null: not said. */
  kind: z.enum(WEATHER_SOURCE_KINDS).nullable(),
  latitude: latitude.nullable(),
  longitude: longitude.nullable(),
  elevationM: z.number().min(-500).max(9_000).nullable(),
  /** IANA zone whose days its days are; null: not said. */
  timeZone: id.nullable(),
  /** Another source, whose days stand where this one has none. */
  fillFrom: id.nullable(),
  /** Null: its days are brought by hand and by file. */
  service: z.enum(WEATHER_SERVICES).nullable(),
  /** The service's own name of the station. */
  stationId: id.nullable(),
  /** Of `address`: with {from} and {to} where the days go; of `folder`: how the names of its files begin. */
  address: text.nullable(),
  /** Whether days are fetched by themselves. */
  fetching: z.boolean(),
  /** The day on which a coordinator confirmed the service's terms. */
  termsSeenOn: isoDay.nullable(),
});

export const weatherSchema = z.object({
  sourceId: id,
  date: isoDay,
  tminC: z.number().min(-90).max(60).nullable(),
  tmaxC: z.number().min(-90).max(60).nullable(),
  precipitationMm: z.number().min(0).max(2_000).nullable(),
  /** The day on which somebody forecast these figures; null, or left out, when they were measured. */
  forecastMadeOn: isoDay.nullable().optional(),
});

export const sampleSchema = z.object({
  fieldId: id,
  insect: id,
  sampledOn: isoDay,
  /** What was looked at: `plants`, `ears`, `fruit`, `egg-masses`, … */
  kind: id,
  unitsExamined: z.int().min(1).max(100_000),
  unitsInfested: count.nullable(),
  totalCount: count.nullable(),
  /** Infested of examined at each place, in the order walked: `1/5`, `0/5`; left out when nobody wrote it down. */
  byPlace: z.array(z.string().regex(/^\d{1,4}\/\d{1,4}$/, { error: 'expected infested/examined, such as 1/5' })).optional(),
  /** A photo of what was found, by its name; may be left out. */
  photo: photoSchema.nullable().optional(),
});

/** Product on an area, or in the water it is mixed with. US fluid measures and acres. */
export const RATE_UNITS = [
  'l-per-ha',
  'ml-per-ha',
  'kg-per-ha',
  'g-per-ha',
  'gal-per-acre',
  'qt-per-acre',
  'pt-per-acre',
  'fl-oz-per-acre',
  'lb-per-acre',
  'oz-per-acre',
  'ml-per-l',
  'g-per-l',
] as const;
export type RateUnit = (typeof RATE_UNITS)[number];

export const treatmentSchema = z.object({
  fieldId: id,
  insect: id,
  appliedOn: isoDay,
  product: text,
  /** Days of protection as the user recorded them; null when not recorded. */
  protectsDays: z.int().min(0).max(365).nullable(),
  /** Re-entry interval in hours, from the product label the user read. */
  reentryHours: z.number().min(0).max(2_000).nullable(),
  /** Pre-harvest interval in days, from the product label the user read. */
  preharvestDays: z.int().min(0).max(365).nullable(),
  /** True where nobody can say which product it was: `product` is empty then. */
  productUnknown: z.boolean().nullable().optional(),
  /** Time of day at which it began, by the field's own clock: `06:30`. */
  appliedAt: z
    .string()
    .length(5)
    .regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: 'expected a time of day such as 06:30' })
    .nullable()
    .optional(),
  /** How much of the product, in `rateUnit`. */
  rate: z.number().min(0).max(100_000).nullable().optional(),
  rateUnit: z.enum(RATE_UNITS).nullable().optional(),
  /** Who applied it, by name or licence, as the user names them. */
  applicator: text.nullable().optional(),
});

export const RULE_MAY = ['decide', 'send-scouting'] as const;
export const DECISIONS = ['not-treated', 'not-scouted'] as const;
export const DECISION_REASONS = [
  'low-for-this-farm',
  'sample-below',
  'other-species',
  'stage-not-at-risk',
  'harvest-near',
  'label-limit',
  'weather',
  'natural-enemies',
  'cost',
  'loss-accepted',
  'adviser',
  'other',
] as const;
export type DecisionReason = (typeof DECISION_REASONS)[number];

/** What a grower answered to a decision or to scouting that was due, when it was not a treatment or a sample. */
export const decisionSchema = z.object({
  fieldId: id,
  insect: id,
  decidedOn: isoDay,
  decision: z.enum(DECISIONS),
  reason: z.enum(DECISION_REASONS),
  note: text.nullable(),
});

export const ruleSchema = z.object({
  ruleId: id,
  crop: id,
  insect: id,
  /** Null: the rule does not say which design it was made for. */
  design: z.enum(TRAP_DESIGNS).nullable(),
  /** Stages at which the rule holds; empty: at any stage. */
  stages: z.array(id),
  threshold: z.number().min(0).max(1_000_000),
  per: z.enum(['night', 'week']),
  intervalDays: z.int().min(1).max(60).nullable(),
  /** What a catch at the threshold may do; null: decide. */
  may: z.enum(RULE_MAY).nullable().optional(),
  validFrom: isoDay.nullable(),
  validTo: isoDay.nullable(),
  source: text.nullable(),
});

export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Weekday = (typeof WEEKDAYS)[number];

/** A season that is planned: what to trap where, and how sure to be. What is left out is proposed. */
export const seasonSchema = z.object({
  /** The year in which the growing year begins: 1 January, south of the equator 1 July. */
  season: z.int().min(1900).max(2200),
  /** Empty: those the program traps. */
  insects: z.array(id),
  /** Empty: all. */
  crops: z.array(id),
  /** field_ids; empty: all. */
  fields: z.array(id),
  /** Empty: twice a week. */
  checkWeekdays: z.array(z.enum(WEEKDAYS)),
  /** Days that traps hang before the earliest plausible flight. */
  leadDays: z.int().min(0).max(120).nullable(),
  /** No more traps than this in all. */
  trapBudget: count.nullable(),
  mostTraps: z.int().min(1).max(50).nullable(),
  /** Accepted probability of missing a rule that is reached. */
  riskMissed: z.number().min(0.001).max(0.999).nullable(),
  /** Accepted probability of reaching a rule in error. */
  riskFalse: z.number().min(0.001).max(0.999).nullable(),
  /** Lures kept in reserve and lost, as a share of those placed. */
  reserveShare: z.number().min(0).max(5).nullable(),
  orderLeadDays: z.int().min(0).max(365).nullable(),
  /** Days that ordered lures keep, stored as their package says; null: a whole season. */
  luresKeepDays: z.int().min(1).max(2_000).nullable(),
  currency: currency.nullable(),
});

/** What the user decides for an insect, in every area or in the one that holds a field. */
export const planSchema = z.object({
  season: z.int().min(1900).max(2200),
  insect: id,
  /** A field_id of the area; `all`: wherever no row of its own says otherwise. */
  area: id,
  design: z.enum(TRAP_DESIGNS).nullable(),
  /** Traps per area. */
  traps: z.int().min(1).max(1_000).nullable(),
  hangOn: isoDay.nullable(),
  takeDownOn: isoDay.nullable(),
  /** Days the maker says the lure lasts. */
  lureLifeDays: z.int().min(1).max(400).nullable(),
  note: text.nullable(),
});

export const PRICED = ['trap', 'lure', 'gloves', 'post', 'driving-hour', 'driving-km', 'replaces'] as const;
export type PricedItem = (typeof PRICED)[number];

/** What one unit costs the user. `replaces` is a season's sum for what the traps replace, such as a fixed schedule. */
export const priceSchema = z.object({
  item: z.enum(PRICED),
  /** Design of the trap, insect of the lure, name of what is replaced; `any` where it makes no difference. */
  of: id,
  price: z.number().min(0).max(100_000_000),
  currency,
  note: text.nullable(),
});

/** What lies in store: a package of lures, or traps kept from earlier seasons. */
export const stockSchema = z.object({
  stockId: id,
  item: z.enum(['lure', 'trap']),
  /** Insect of the lures, design of the traps. */
  of: id,
  onHand: count,
  countedOn: isoDay,
  /** Traps of these that are fit for no further season; null: not known. */
  wornOut: count.nullable(),
  /** Null: unopened. */
  openedOn: isoDay.nullable(),
  expiresOn: isoDay.nullable(),
  /** Where and how it is kept. */
  storage: text.nullable(),
});

export const ANSWERS = ['right', 'later', 'declined'] as const;

/** What somebody answered to a question that Duskwatch asked about the records or what they suggest. */
export const answerSchema = z.object({
  /** Names the question and the figures it is about: other figures make another question. */
  question: text.min(1),
  /** `right`: it is as written. `later`: ask again some days on. `declined`: a suggestion not taken. */
  answer: z.enum(ANSWERS),
  answeredOn: isoDay,
  note: text.nullable(),
});

export const settingsSchema = z.object({
  name: z.string().trim().min(1).max(120),
  /** How the coordinator is reached, as labels and the bulletin print it. Null: not said. */
  contact: text.nullable().optional(),
  /** True for demonstration data: every screen says so. */
  invented: z.boolean(),
  /** A program that stopped at a day (a demo, an archive) is read as of that day; null: today. */
  pinnedOn: isoDay.nullable(),
  /** Where the program is, as the catalogue writes regions: rules made for it go before others. Null: not chosen. */
  region: text.nullable().optional(),
  /** Rules of the catalogue that the program chose among rivals, by their ids: they go before the region's. */
  chosenRules: z.array(id).nullable().optional(),
  /** Rules of the catalogue that the program does not go by, each with why. */
  rulesOff: z
    .array(z.object({ ruleId: id, reason: text }))
    .nullable()
    .optional(),
});

export type FieldRecord = z.infer<typeof fieldSchema>;
export type StageRecord = z.infer<typeof stageSchema>;
export type TrapRecord = z.infer<typeof trapSchema>;
export type LureRecord = z.infer<typeof lureSchema>;
export type CheckRecord = z.infer<typeof checkSchema>;
export type SkipRecord = z.infer<typeof skipSchema>;
export type NormalRecord = z.infer<typeof normalSchema>;
export type SourceRecord = z.infer<typeof sourceSchema>;
export type WeatherRecord = z.infer<typeof weatherSchema>;
export type SampleRecord = z.infer<typeof sampleSchema>;
export type TreatmentRecord = z.infer<typeof treatmentSchema>;
export type DecisionRecord = z.infer<typeof decisionSchema>;
export type RuleRecord = z.infer<typeof ruleSchema>;
export type SeasonRecord = z.infer<typeof seasonSchema>;
export type PlanRecord = z.infer<typeof planSchema>;
export type PriceRecord = z.infer<typeof priceSchema>;
export type StockRecord = z.infer<typeof stockSchema>;
export type AnswerRecord = z.infer<typeof answerSchema>;
export type ProgramSettings = z.infer<typeof settingsSchema>;
