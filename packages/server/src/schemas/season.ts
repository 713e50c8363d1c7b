import {
  type EffectOnAdvice,
  type HangBy,
  type PlanDeviation,
  PRICED,
  planSchema,
  priceSchema,
  type SeasonQuestion,
  type SeasonTruthView,
  type SeasonView,
  seasonSchema,
  stockSchema,
  WEEKDAYS,
} from '@duskwatch/core';
import { z } from 'zod';
import { design, oneOf, standing, verb } from './advice.ts';
import { date } from './common.ts';
import { insectName, localName, named } from './week.ts';

/** A value told from its siblings by one word; its fields are described where it is made, in the core. */
const toldBy = <K extends string, T extends Record<K, string>>(property: K, words: Record<T[K], true>) =>
  z.looseObject({ [property]: oneOf<T[K]>(words) }) as unknown as z.ZodType<T>;

const state = z.enum(['ahead', 'running', 'over']);
const chance = z.number().min(0).max(1);
const field = z.object({ fieldId: z.string(), name: z.string(), farm: z.string(), crop: z.string() });

const row = z.object({
  traps: z.int(),
  nightsBetweenChecks: z.int(),
  visits: z.int().describe('Visits to each trap behind one reading of the rule.'),
  precision: z.number().describe('Half-width of the interval of the mean at the threshold, as a share of it.'),
  missed: chance.describe('The rule is not reached although moths come well above it.'),
  falseAlarm: chance.describe('The rule is reached although moths come well below it.'),
  enough: z.boolean(),
});

const assumption = z.object({
  id: z.string(),
  value: z.number(),
  unit: localName,
  why: localName,
  source: z.string(),
  standing,
  note: localName.nullable().optional(),
});

const dispersion = z.object({
  k: z.number(),
  reason: z.enum(['own-checks', 'too-few-checks', 'no-scatter-found', 'no-fit']),
  assumption: assumption.nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  blocks: z.int(),
  counts: z.int(),
  moths: z.int(),
});

const rule = z.object({
  ruleId: z.string(),
  thresholdPerNight: z.number(),
  windowNights: z.int(),
  source: z.string(),
  standing,
});

const hang = toldBy<'basis', HangBy>('basis', { heat: true, chosen: true, stated: true, unknown: true });

const flight = toldBy<'kind', SeasonView['lines'][number]['flights'][number]>('kind', {
  reached: true,
  'not-reached': true,
  unknown: true,
});

const practice = z.object({
  id: z.string(),
  act: z.string(),
  weight: z.enum(['fact', 'caution']),
  insects: z.array(z.string()).nullable(),
  designs: z.array(design).nullable(),
  text: localName,
  figure: z.object({ low: z.number(), high: z.number(), unit: z.enum(['m', 'days', 'h']) }).nullable(),
  source: z.string(),
  standing,
  note: localName.nullable().optional(),
}) as unknown as z.ZodType<SeasonView['cautions'][number]>;

const line = z.object({
  id: z.string(),
  insect: z.string(),
  farm: z.string(),
  fields: z.array(field),
  design: z.object({
    design: design.nullable(),
    why: z.enum(['stated', 'rule', 'used-before', 'practice', 'not-known']),
    source: z.string().nullable(),
    standing: standing.nullable(),
  }),
  rule: rule.nullable(),
  traps: z.object({
    count: z.int(),
    why: z.enum(['stated', 'risk', 'most', 'budget', 'no-rule']),
    quality: row.nullable(),
    proposed: z.int(),
    dispersion: dispersion.nullable(),
  }),
  numbers: z.string().nullable().describe('Key of the table of trap numbers behind it.'),
  hang,
  flights: z.array(flight),
  takeDown: z.object({
    on: date.nullable(),
    why: z.enum(['stated', 'harvest', 'harvest-as-before', 'as-before', 'assumed', 'not-known']),
  }),
  checks: z.int(),
  nightsBetweenChecks: z.int(),
  caution: z.literal('ends-before-it-begins').nullable(),
  lureLife: z.object({ days: z.int(), why: z.enum(['stated', 'own-records', 'practice']), source: z.string().nullable() }),
  changes: z.array(z.object({ on: date, ageDays: z.int(), extraVisit: z.boolean() })),
  decidedHere: planSchema.nullable(),
  decidedEverywhere: planSchema.nullable(),
});

const numbers = z.object({
  key: z.string(),
  insect: z.string(),
  design,
  rule,
  dispersion,
  riskMissed: chance,
  riskFalse: chance,
  aboveShare: z.number(),
  belowShare: z.number(),
  mostTraps: z.int(),
  planned: z.object({ nightsBetweenChecks: z.int(), enough: z.int(), isEnough: z.boolean() }),
  rows: z.array(row),
});

const range = { low: z.number(), high: z.number() };
const lures = z.object({
  needs: z.array(
    z.object({
      insect: z.string(),
      placed: z.int(),
      reserve: z.int(),
      inAll: z.int(),
      months: z.array(z.object({ insect: z.string(), month: z.string(), lures: z.int() })),
    }),
  ),
  months: z.array(z.string()),
  orders: z.array(
    z.object({
      insect: z.string(),
      lures: z.int(),
      neededOn: date,
      orderBy: date,
      late: z.boolean(),
      ordinal: z.int(),
      cost: z.object(range).nullable(),
    }),
  ),
  stock: z.array(
    z.object({
      insect: z.string(),
      lures: z.int(),
      opened: z.boolean(),
      expiresOn: date.nullable(),
      used: z.int(),
      left: z.int(),
      why: z.enum(['expires-before-use', 'opened-without-date', 'not-needed']).nullable(),
      record: stockSchema,
      takenSince: z.int(),
      expired: z.boolean(),
    }),
  ),
  due: z.array(
    z.object({
      trapId: z.string(),
      station: z.string(),
      insect: z.string(),
      placedOn: date.nullable(),
      ends: date.nullable(),
      changeOn: date.nullable(),
      overdueDays: z.int(),
    }),
  ),
  unknownLines: z.array(z.string()),
  cautions: z.array(practice),
});

const kind = z.enum(['trap', 'lure', 'gloves', 'post', 'driving-hour', 'driving-km']);
const total = { ...range, atLeast: z.boolean().describe('Something has no price or no quantity.') };
const budget = z.object({
  currency: z.string(),
  rows: z.array(
    z.object({
      kind,
      of: z.string().nullable(),
      quantity: z.number().nullable(),
      price: z.object({ ...range, standing: z.enum([...standing.options, 'user']), source: z.string().nullable() }).nullable(),
      low: z.number().nullable(),
      high: z.number().nullable(),
    }),
  ),
  total: z.object(total),
  byFarm: z.array(z.object({ farm: z.string(), ...total })),
  byField: z.array(field.extend(total)),
  byInsect: z.array(z.object({ insect: z.string(), ...total })),
  traps: z.array(
    z.object({
      design: design.nullable(),
      needed: z.int(),
      kept: z.int(),
      wornOut: z.int(),
      bought: z.int(),
      from: z.enum(['stock', 'hung-before']).nullable(),
    }),
  ),
  missing: z.array(z.object({ kind, of: z.string().nullable(), why: z.enum(['price', 'quantity']) })),
  replaces: z.array(priceSchema),
  replacedTotal: z.number().nullable(),
  otherCurrency: z.array(priceSchema),
  askable: z.array(z.object({ item: z.enum(PRICED), of: z.string() })),
});

const question = toldBy<'kind', SeasonQuestion>('kind', {
  'one-spot': true,
  'no-coordinates': true,
  'no-such-area': true,
  'no-such-field': true,
});

export const seasonView: z.ZodType<SeasonView> = z.object({
  program: named,
  season: z.int(),
  from: date,
  to: date.describe('First day of the next growing year.'),
  today: date,
  state,
  seasons: z.array(z.int()),
  written: seasonSchema.nullable(),
  checkWeekdays: z.array(z.enum(WEEKDAYS)),
  insects: z.array(insectName),
  crops: z.array(z.string()),
  fields: z.array(field),
  lines: z.array(line),
  notHosts: z.array(z.object({ insect: z.string(), fields: z.int() })),
  trapsInAll: z.int(),
  trapsProposed: z.int(),
  numbers: z.array(numbers),
  lures,
  budget: budget.nullable().describe('Null: not for whoever asks.'),
  questions: z.array(question),
  assumptions: z.array(assumption.extend({ written: z.number().nullable() })),
  cautions: z.array(practice),
}) as z.ZodType<SeasonView>;

const deviation = toldBy<'kind', PlanDeviation>('kind', {
  'hung-late': true,
  'not-hung': true,
  'other-design': true,
  'missed-checks': true,
  'lure-overdue': true,
  'lure-unknown': true,
  'fewer-traps': true,
});

const effect = toldBy<'kind', EffectOnAdvice>('kind', {
  'biofix-late': true,
  'out-of-sight': true,
  'reads-low': true,
  'risks-grown': true,
  'rule-not-for-design': true,
});

export const seasonTruthView: z.ZodType<SeasonTruthView> = z.object({
  season: z.int(),
  today: date,
  state,
  lines: z.array(
    z.object({
      id: z.string(),
      insect: z.string(),
      farm: z.string(),
      fields: z.array(field),
      planned: z.object({ traps: z.int(), hangOn: date.nullable(), takeDownOn: date.nullable() }),
      deviations: z.array(deviation),
      effects: z.array(effect),
      checksMade: chance.nullable(),
      advice: z.array(z.object({ field: z.string(), name: z.string(), verb })),
    }),
  ),
});
