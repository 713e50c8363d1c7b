/** What the season pages show. */
import { z } from 'zod';
import { dispersionSchema } from '../advice/dispersion-schema.ts';
import { verbSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { assumptionSchema, practiceSchema } from '../catalogue/schema.ts';
import {
  costKindSchema,
  deviationSchema,
  effectSchema,
  hangBySchema,
  lureChangeSchema,
  lureLifeSchema,
  lureNeedSchema,
  lureOrderSchema,
  pastFlightSchema,
  placingQuestionSchema,
  plannedDesignSchema,
  plannedNumberSchema,
  plannedRuleSchema,
  plannedTakeDownSchema,
  priceShownSchema,
  rangeSchema,
  stockUseSchema,
  totalSchema,
  trapNumberRowSchema,
  trapStockSchema,
  truthCauseSchema,
} from '../planning/schema.ts';
import {
  isoDay,
  PRICED,
  planSchema,
  priceSchema,
  seasonSchema,
  stockSchema,
  trapDesignSchema,
  WEEKDAYS,
} from '../records/schema.ts';
import { insectNameSchema, namedFieldSchema, namedProgramSchema } from './schema.ts';

const stateSchema = z.enum(['ahead', 'running', 'over']);
const chance = z.number().min(0).max(1);

const seasonFieldSchema = namedFieldSchema.extend({ crop: z.string() }).meta({ id: 'SeasonField' });
export type SeasonField = Shape<typeof seasonFieldSchema>;

const carried = { carried: isoDay.nullable().describe('The same wait in the season planned.') };
const [reached, notReached, unknown] = pastFlightSchema.options;
const carriedFlightSchema = z
  .discriminatedUnion('kind', [reached.extend(carried), notReached.extend(carried), unknown.extend(carried)])
  .meta({ id: 'CarriedFlight', description: "A past year's first flight." });
export type CarriedFlight = Shape<typeof carriedFlightSchema>;

const seasonLineViewSchema = z
  .object({
    id: z.string(),
    insect: z.string(),
    farm: z.string(),
    fields: z.array(seasonFieldSchema),
    design: plannedDesignSchema,
    rule: plannedRuleSchema.nullable(),
    traps: plannedNumberSchema,
    numbers: z.string().nullable().describe('Key of the table of trap numbers; null without a rule or a design.'),
    hang: hangBySchema,
    flights: z.array(carriedFlightSchema),
    takeDown: plannedTakeDownSchema,
    checks: z.int(),
    nightsBetweenChecks: z.int(),
    caution: z.literal('ends-before-it-begins').nullable(),
    lureLife: lureLifeSchema,
    changes: z.array(lureChangeSchema),
    decidedHere: planSchema.nullable().describe('The row for this area alone; null: not written.'),
    decidedEverywhere: planSchema.nullable().describe('The row for the insect everywhere; null: not written.'),
  })
  .meta({ id: 'PlannedLine', description: 'One insect in one area, with what was decided for it.' });
export type SeasonLineView = Shape<typeof seasonLineViewSchema>;

const trapNumbersSchema = z
  .object({
    key: z.string(),
    insect: z.string(),
    design: trapDesignSchema,
    rule: plannedRuleSchema,
    dispersion: dispersionSchema,
    riskMissed: chance.describe('Accepted.'),
    riskFalse: chance.describe('Accepted.'),
    aboveShare: z.number(),
    belowShare: z.number(),
    mostTraps: z.int(),
    planned: z.object({ nightsBetweenChecks: z.int(), enough: z.int(), isEnough: z.boolean() }),
    rows: z.array(trapNumberRowSchema),
  })
  .meta({
    id: 'TrapNumbers',
    description: 'How good a number of traps is, for every number and rhythm worth looking at.',
  });
export type TrapNumbers = Shape<typeof trapNumbersSchema>;

const stockRowSchema = stockUseSchema
  .extend({ record: stockSchema, takenSince: z.int(), expired: z.boolean() })
  .meta({ id: 'StockRow' });
export type StockRow = Shape<typeof stockRowSchema>;

const lureDueSchema = z
  .object({
    trapId: z.string(),
    station: z.string(),
    insect: z.string(),
    placedOn: isoDay.nullable(),
    ends: isoDay.nullable().describe('Null: nobody wrote how long it lasts, or none was placed.'),
    changeOn: isoDay
      .nullable()
      .describe("The last check in the trap's rhythm up to the end of its life; a day of its own where there is none."),
    overdueDays: z.int(),
  })
  .meta({ id: 'LureDue', description: 'A lure that hangs now.' });
export type LureDue = Shape<typeof lureDueSchema>;

const seasonLuresSchema = z
  .object({
    needs: z.array(lureNeedSchema.extend({ inAll: z.int().describe('Placed and in reserve.') })),
    months: z.array(z.string()).describe('Every month in which lures are placed, ascending.'),
    orders: z.array(lureOrderSchema.extend({ cost: rangeSchema.nullable() })),
    stock: z.array(stockRowSchema),
    due: z.array(lureDueSchema),
    unknownLines: z
      .array(z.string())
      .describe('Lines that take lures, but no one knows how many: hanging or taking down is not known.'),
    cautions: z.array(practiceSchema),
  })
  .meta({ id: 'SeasonLures' });
export type SeasonLures = Shape<typeof seasonLuresSchema>;

const budgetRowSchema = z
  .object({
    kind: costKindSchema,
    of: z.string().nullable().describe('Design, insect or farm.'),
    quantity: z.number().nullable(),
    price: priceShownSchema.nullable(),
    low: z.number().nullable(),
    high: z.number().nullable(),
  })
  .meta({ id: 'BudgetRow' });
export type BudgetRow = Shape<typeof budgetRowSchema>;

const seasonBudgetSchema = z
  .object({
    currency: z.string(),
    rows: z.array(budgetRowSchema),
    total: totalSchema,
    byFarm: z.array(totalSchema.extend({ farm: z.string() })),
    byField: z.array(totalSchema.extend(seasonFieldSchema.shape)),
    byInsect: z.array(totalSchema.extend({ insect: z.string() })),
    traps: z.array(trapStockSchema.extend({ from: z.enum(['stock', 'hung-before']).nullable() })),
    missing: z.array(z.object({ kind: costKindSchema, of: z.string().nullable(), why: z.enum(['price', 'quantity']) })),
    replaces: z.array(priceSchema),
    replacedTotal: z.number().nullable().describe("The user's own sum for what is replaced; null: nothing is entered."),
    otherCurrency: z.array(priceSchema),
    askable: z
      .array(z.object({ item: z.enum(PRICED), of: z.string() }))
      .describe('Prices that may be entered: everything the plan takes.'),
  })
  .meta({ id: 'SeasonBudget' });
export type SeasonBudgetView = Shape<typeof seasonBudgetSchema>;

const seasonQuestionSchema = z
  .discriminatedUnion('kind', [
    ...placingQuestionSchema.options,
    z.object({ kind: z.literal('no-such-area'), insect: z.string(), area: z.string() }),
    z.object({ kind: z.literal('no-such-field'), field: z.string(), insect: z.string() }),
  ])
  .meta({ id: 'SeasonQuestion' });
export type SeasonQuestion = Shape<typeof seasonQuestionSchema>;

export const seasonViewSchema = z
  .object({
    program: namedProgramSchema,
    season: z.int(),
    from: isoDay,
    to: isoDay.describe('First day of the next growing year.'),
    today: isoDay,
    state: stateSchema,
    seasons: z.array(z.int()).describe('Seasons with something written, the running one and the next.'),
    written: seasonSchema.nullable().describe('What the plan asks for; null: nothing is written, and all of it is proposed.'),
    checkWeekdays: z.array(z.enum(WEEKDAYS)),
    insects: z.array(insectNameSchema),
    crops: z.array(z.string()),
    fields: z.array(seasonFieldSchema),
    lines: z.array(seasonLineViewSchema),
    notHosts: z
      .array(z.object({ insect: z.string(), fields: z.int() }))
      .describe('Pairs without a line because the crop hosts the insect not, counted by insect.'),
    trapsInAll: z.int(),
    trapsProposed: z.int(),
    numbers: z.array(trapNumbersSchema),
    lures: seasonLuresSchema,
    budget: seasonBudgetSchema.nullable().describe('Null: not for whoever asks.'),
    questions: z.array(seasonQuestionSchema),
    assumptions: z.array(assumptionSchema.extend({ written: z.number().nullable() })),
    cautions: z.array(practiceSchema),
  })
  .meta({ id: 'Season' });
export type SeasonView = Shape<typeof seasonViewSchema>;

const seasonTruthLineSchema = z
  .object({
    id: z.string(),
    insect: z.string(),
    farm: z.string(),
    fields: z.array(seasonFieldSchema),
    planned: z.object({ traps: z.int(), hangOn: isoDay.nullable(), takeDownOn: isoDay.nullable() }),
    cause: truthCauseSchema,
    telling: z.int().nullable().describe('Traps that tell something now; null outside the season of the line.'),
    risk: z
      .object({ planned: chance.nullable(), now: chance.nullable() })
      .describe('Chance of missing the rule by the number of traps; now null: no trap tells anything, or no rule.'),
    traps: z
      .array(
        z.object({
          trapId: z.string(),
          hungOn: isoDay,
          takenDownOn: isoDay.nullable(),
          checks: z.array(isoDay),
          missed: z.array(isoDay).describe('Planned checks that nobody made.'),
          lures: z.array(z.object({ placedOn: isoDay, ends: isoDay.nullable() })),
        }),
      )
      .describe('First hung first.'),
    deviations: z.array(deviationSchema),
    effects: z.array(effectSchema),
    checksMade: chance.nullable(),
    advice: z.array(
      z.object({ field: z.string(), name: z.string(), verb: verbSchema, by: isoDay.nullable(), dueSince: isoDay.nullable() }),
    ),
  })
  .meta({ id: 'SeasonTruthLine' });
export type SeasonTruthLine = Shape<typeof seasonTruthLineSchema>;

export const seasonTruthSchema = z
  .object({ season: z.int(), today: isoDay, state: stateSchema, lines: z.array(seasonTruthLineSchema) })
  .meta({ id: 'SeasonTruth', description: 'The plan of a season held against what has happened.' });
export type SeasonTruthView = Shape<typeof seasonTruthSchema>;
