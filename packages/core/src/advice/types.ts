/** Advice is a value: a verb, a date, and the records and numbers it rests on. Wording is made at the edge. */
import { z } from 'zod';
import type { Shape } from '../base/shape.ts';
import { biofixRuleSchema, eventSchema, localTextSchema, standingSchema } from '../catalogue/schema.ts';
import { type CatchInterval, type NoInformation, unusableSchema } from '../catch/types.ts';
import { conditionSchema, DECISION_REASONS, DECISIONS, isoDay, trapDesignSchema } from '../records/schema.ts';

const whole = z.int();
const share = z.number().min(0).max(1);
const perUnit = z.number().min(0).describe('Share of units infested, or egg masses per unit.');
const heatUnit = z.enum(['C', 'F']).describe('Unit of the degree-days.');
const per = z.enum(['night', 'week']);

/** The five verbs, and `none` for a field and insect that are out of season together. */
export const verbSchema = z.enum(['watch', 'scout', 'decide', 'covered', 'blind', 'none']).meta({
  id: 'Verb',
  description: 'What there is to do; `none` for a field and insect that are out of season together.',
});
export type Verb = Shape<typeof verbSchema>;

export const confidenceSchema = z.enum(['high', 'moderate', 'low']);
export type Confidence = Shape<typeof confidenceSchema>;

export const checkEvidenceSchema = z
  .object({
    trapId: z.string(),
    from: isoDay,
    to: isoDay,
    visits: z.array(whole).describe('The `visit` of each record of the last day that it rests on.'),
    nights: whole,
    count: whole.nullable(),
    others: whole.nullable(),
    condition: conditionSchema,
    lureAgeDays: whole.nullable(),
    lureLifeDays: whole.nullable(),
  })
  .meta({ id: 'CheckEvidence', description: 'What one visit to one trap tells about the nights before it.' });
export type CheckEvidence = Shape<typeof checkEvidenceSchema>;

export const kBasisSchema = z
  .discriminatedUnion('from', [
    z.object({ from: z.literal('own-checks'), low: z.number(), high: z.number(), counts: whole }),
    z.object({ from: z.literal('assumed'), why: z.enum(['too-few-checks', 'no-scatter-found', 'no-fit']) }),
  ])
  .meta({
    id: 'DispersionBasis',
    description: 'The program’s own dispersion, with about 95 % limits, and the counts behind it; or the assumed one.',
  });
export type KBasis = Shape<typeof kBasisSchema>;

export const visitScatterSchema = z
  .object({
    between: z.literal('visits-of-one-trap'),
    from: z.enum(['prior', 'own-checks']),
    low: z.number(),
    high: z.number(),
    visits: whole,
    traps: whole,
  })
  .meta({
    id: 'VisitScatter',
    description: "The scatter that the k of a rate means, with its 80 % limits, and the program's own visits behind it.",
  });
export type VisitScatter = Shape<typeof visitScatterSchema>;

/** Days by which something comes: when it came, or its 10, 50 and 90 % days. */
export const datesSchema = z
  .object({
    early: isoDay,
    middle: isoDay,
    late: isoDay,
    lateOpen: z.boolean().describe('`late` is only as far as is looked ahead: it may come later still, or not at all.'),
    method: z.enum(['reached', 'own-forecast', 'past-years', 'normals', 'recent-days']).describe('`reached`: the heat has come.'),
    years: whole.describe('Past years that the spread is from.'),
  })
  .meta({ id: 'Dates', description: 'When something comes: the day on which it came, or its 10, 50 and 90 % days.' });
export type LarvaeDates = Shape<typeof datesSchema>;

export const expectedSchema = datesSchema
  .extend({
    forecastThrough: isoDay
      .nullable()
      .describe("Last day of the user's own weather forecast that the dates rest on; null: none was used."),
  })
  .meta({ id: 'ExpectedDates' });

const insectStage = z.enum(['egg', 'small-larva', 'large-larva', 'larva']);

/** Why field and insect do not meet now. */
export const outOfSeasonSchema = z.enum(['not-a-host', 'no-rule', 'not-planted', 'harvested', 'harvest-stop', 'stage']);

/** What would have to be known. */
export const missingSchema = z.enum([
  'trap',
  'rule',
  'stage',
  'weather',
  'weather-source',
  'model',
  'biofix',
  'crop',
  'nearby-crop',
  'protection',
]);

/** Figures chosen by Duskwatch that an intense capture between visits is read with. */
const captureAssumed = z.object({
  k: z.number().describe('Dispersion of the counts of single nights.'),
  likely: share.describe('Probability from which it is taken to have happened.'),
});

/** What a stage is carried forward by where it is heat. */
const stageHeatSchema = z
  .object({
    degreeDays: z.number().describe('Since the stage was seen, as far as weather is known.'),
    fast: z.number().describe('From planting to harvest, of the fastest planting.'),
    slow: z.number().describe('The same of the slowest.'),
    unit: heatUnit,
    ofField: z.boolean().describe('Both are of past years between the dates typed for the field, not of the catalogue.'),
    source: z.string(),
    standing: standingSchema,
  })
  .meta({ id: 'StageHeat' });
export type StageHeat = Shape<typeof stageHeatSchema>;

export const evidenceSchema = z
  .discriminatedUnion('kind', [
    z
      .object({
        kind: z.literal('out-of-season'),
        why: outOfSeasonSchema,
        date: isoDay.nullable(),
        days: whole.nullable(),
      })
      .describe('Why field and insect do not meet now.'),
    z.object({
      kind: z.literal('stage'),
      stage: z.string(),
      observedOn: isoDay,
      ageDays: whole,
      needed: z.array(z.string()),
      susceptible: z.boolean(),
      now: z
        .object({
          from: z.string(),
          to: z.string(),
          mayBeSince: isoDay.nullable(),
          heat: stageHeatSchema.nullable().describe('Null where the stage is carried by the calendar.'),
        })
        .nullable()
        .describe(
          'Stages that the crop may be at by heat or by the calendar, and the earliest day since which one of those needed; null where nothing carries the stage forward.',
        ),
    }),
    z.object({
      kind: z.literal('rate'),
      design: trapDesignSchema,
      perNight: z.number(),
      low: z.number(),
      high: z.number(),
      level: share,
      count: whole,
      trapNights: whole,
      model: z.enum(['negative-binomial', 'gamma-poisson']),
      k: z.number().nullable().describe('Median of what is known of k.'),
      scatter: visitScatterSchema.describe('Which scatter k is, and where it is from.'),
      checks: z.array(checkEvidenceSchema),
    }),
    z.object({
      kind: z.literal('threshold'),
      ruleId: z.string(),
      threshold: z.number(),
      per,
      rate: z.number(),
      reached: z.boolean(),
      probabilityAbove: share,
      nearbyCrop: z.string().nullable(),
    }),
    z.object({
      kind: z.literal('tier'),
      ruleId: z.string(),
      from: z.number().nullable(),
      below: z.number().nullable(),
      rate: z.number(),
      intervalDays: z.number().nullable(),
      probabilityAbove: share,
    }),
    z.object({
      kind: z.literal('weather-adjustment'),
      when: z.enum(['maxima-below', 'maxima-above']),
      temperatureC: z.number(),
      days: whole,
      addDays: whole,
      applied: z.boolean().nullable(),
      source: z.string(),
    }),
    z.object({
      kind: z.literal('accumulation'),
      nights: whole,
      trapNights: whole,
      perTrap: z.number(),
      atThreshold: z.number(),
      share: z.number(),
      addsUp: z.boolean().describe('Enough of the threshold, night after night, to send somebody into the field.'),
    }),
    z.object({
      kind: z.literal('biofix'),
      rule: z.discriminatedUnion('kind', [...biofixRuleSchema.options, z.object({ kind: z.literal('user') })]),
      on: isoDay,
      earliest: isoDay.nullable().describe('The first day it may have been; null where nothing bounds a flight already running.'),
      running: z.boolean().describe('The flight was already running when the trap was hung: `on` is the latest day.'),
      probability: share.nullable().describe('For an intense capture: the probability that it was reached within those nights.'),
      assumed: captureAssumed.nullable().describe('For an intense capture: the figures that the probability rests on.'),
      trapId: z.string().nullable(),
    }),
    z
      .object({
        kind: z.literal('capture-chance'),
        moths: whole,
        nights: whole,
        probability: share,
        trapId: z.string(),
        from: isoDay,
        to: isoDay,
        assumed: captureAssumed,
      })
      .describe(
        'An intense capture that may be hidden in the nights between visits, but is not likely enough to date anything by: its probability in the trap where that is highest, and when it may have been.',
      ),
    z.object({
      kind: z.literal('event'),
      modelId: z.string(),
      event: eventSchema,
      generation: whole.nullable(),
      from: z.number().describe("Degree-days from the model's start."),
      to: z.number().nullable(),
      unit: heatUnit,
      heatSoFar: z.number(),
      heatThrough: isoDay,
      bridgedDays: whole,
      filledDays: whole.describe('Days whose weather was taken from the source named for gaps.'),
      filledFrom: z.string().nullable(),
      status: z.enum(['ahead', 'now', 'past']),
      start: z
        .object({ earliest: isoDay.nullable(), latest: isoDay, running: z.boolean() })
        .nullable()
        .describe('Where the start of the model is not sure: from when to when it may have been. Its dates are then the latest.'),
      expected: expectedSchema.nullable().describe('Day the event was reached, or the day it is expected with its spread.'),
    }),
    z.object({
      kind: z.literal('sample'),
      sampledOn: isoDay,
      what: z.string(),
      examined: whole,
      infested: whole.nullable().describe('Null when nobody wrote how many.'),
      share: perUnit.nullable(),
      ruleId: z.string().nullable(),
      sign: z
        .enum(['infested', 'eggs', 'damaged', 'egg-masses'])
        .nullable()
        .describe('What was looked for under the rule; null without one.'),
      ruleShare: perUnit.nullable(),
      verdict: z
        .enum(['above', 'below', 'not-yet'])
        .nullable()
        .describe('Null when no rule fits what was looked at, or nobody wrote how many were infested.'),
      settledBy: z
        .enum(['plan', 'limits', 'full-sample'])
        .nullable()
        .describe('A line of the sequential plan, the limits, or a sample as large as the rule asks for.'),
      low: perUnit.nullable().describe('Limits of the share, as sure as the scouting plan.'),
      high: perUnit.nullable(),
      more: whole.nullable().describe('Units still to look at before it can speak; null once it does.'),
      clumped: z
        .object({
          correlation: z.number().describe('Of two units at one place.'),
          samples: whole.describe('Own samples that show it; 0: it is assumed.'),
        })
        .nullable()
        .describe('How alike neighbours are, where this alone changes what the sample says; null where it does not.'),
      withInsect: z.string().nullable(),
    }),
    z.object({
      kind: z.literal('treatment'),
      appliedOn: isoDay,
      product: z.string(),
      protectsUntil: isoDay
        .nullable()
        .describe('Day on which the protection typed from the label ends; null when none was typed.'),
      intervalDays: whole
        .nullable()
        .describe('Days between decisions that the rule gives at the present catch; null when it asks for none or gives none.'),
      coversUntil: isoDay
        .nullable()
        .describe('First day no longer covered, by the earlier of the two; null when neither says how long the treatment lasts.'),
      endsBy: z.enum(['label', 'rule', 'assumed']).nullable().describe('Which of them it was; `assumed` where neither is known.'),
      state: z.enum(['covering', 'lapsed', 'unknown']),
    }),
    z
      .object({
        kind: z.literal('decision'),
        decidedOn: isoDay,
        decision: z.enum(DECISIONS),
        reason: z.enum(DECISION_REASONS),
        note: z.string().nullable(),
        holdsUntil: isoDay.describe('The day on which the question comes back.'),
        by: z
          .enum(['rule', 'assumed', 'sample-life'])
          .describe('By what: the interval of the rule, an assumed one, or as long as a sample speaks.'),
        days: whole,
      })
      .describe('Somebody decided not to act on what was due.'),
    z.object({
      kind: z.literal('trap-unusable'),
      trapId: z.string(),
      design: trapDesignSchema,
      why: unusableSchema,
      since: isoDay.nullable(),
      nights: whole.nullable(),
    }),
    z
      .object({
        kind: z.literal('trap-doubt'),
        trapId: z.string(),
        design: trapDesignSchema,
        doubt: z.enum(['silent', 'loud']),
        degree: z.enum(['moderate', 'strong']),
        since: isoDay,
        to: isoDay,
        nights: whole,
        count: whole,
        expected: z.number().describe('Moths that each of the other traps of its kind caught at the mean.'),
        chance: share.describe('Probability that a sound trap shows this.'),
      })
      .describe('The records leave a doubt whether the trap is sound.'),
    z.object({ kind: z.literal('lure-spent'), trapId: z.string(), ageDays: whole, lifeDays: whole }),
    z.object({ kind: z.literal('lure-unknown'), trapIds: z.array(z.string()) }),
    z.object({
      kind: z.literal('missing'),
      what: missingSchema,
      from: isoDay.nullable(),
      to: isoDay.nullable(),
      detail: z.string().nullable(),
    }),
    z.object({
      kind: z.literal('other-rule'),
      ruleId: z.string(),
      region: z.string(),
      threshold: z.number().nullable(),
      per: per.nullable(),
      stages: z.array(z.string()).describe('Stages at which it holds; empty: any.'),
      verb: verbSchema.describe('What it would say of the present catch at one of them.'),
      source: z.string(),
    }),
    z
      .object({ kind: z.literal('rule-off'), ruleId: z.string(), region: z.string(), reason: z.string() })
      .describe('A rule that would hold here, which the program has switched off.'),
    z
      .object({ kind: z.literal('choice-open'), ruleId: z.string(), region: z.string() })
      .describe('Rivals stand and the program has not chosen among them: the strictest speaks.'),
    z
      .object({
        kind: z.literal('scouting-asked'),
        why: z.enum([
          'catch-above',
          'catch-near',
          'catch-rising',
          'catch-adds-up',
          'sample-small',
          'sample-clean',
          'stage-unseen',
        ]),
        madeFor: z
          .array(z.string())
          .describe('The stages that the rule for the catch was made for, where the crop is at another; else empty.'),
      })
      .describe('Why somebody is to look at the plants, where traps or an earlier sample ask for it.'),
    z.object({
      kind: z.literal('other-design'),
      design: trapDesignSchema,
      perNight: z.number(),
      ratio: z.tuple([z.number(), z.number()]).nullable(),
      against: trapDesignSchema.nullable(),
      adjusted: z.tuple([z.number(), z.number()]).nullable(),
      source: z.string().nullable(),
    }),
    z
      .object({
        kind: z.literal('larvae'),
        modelId: z.string(),
        source: z.string(),
        standing: standingSchema,
        heat: z
          .object({ beforeLaying: z.number(), egg: z.number(), unit: heatUnit })
          .describe('Degree-days before a moth lays, and from egg to hatch.'),
        design: trapDesignSchema,
        moths: z.number().describe('Caught in the nights from `from` to `to`, all traps together.'),
        traps: whole,
        from: isoDay,
        to: isoDay,
        unknownNights: whole,
        checks: z.array(checkEvidenceSchema),
        on: isoDay.describe('The day worth going, or the day read where none comes.'),
        shares: z
          .object({ egg: share, 'small-larva': share, 'large-larva': share, larva: share })
          .nullable()
          .describe('Shares of the offspring in the field that day: eggs and larvae, none grown beyond. They add up to 1.'),
        lookFor: z.enum(['nothing-yet', ...insectStage.options]),
        places: z
          .array(z.object({ stage: insectStage, where: localTextSchema, source: z.string(), standing: standingSchema }))
          .describe('Where to look for each stage that is a tenth of them or more; none where the catalogue has no word.'),
        worthGoing: datesSchema
          .nullable()
          .describe(
            'First day small larvae are a tenth of the offspring or more, with its 80 % window; null: not within the days looked ahead.',
          ),
        hatch: z
          .object({ ten: isoDay.nullable(), half: isoDay.nullable() })
          .describe('Days by which a tenth and half of the eggs have hatched; null: later than looked ahead.'),
      })
      .describe('What the moths caught have left in the field, and when it is worth going.'),
    z
      .object({
        kind: z.literal('sampling'),
        ruleId: z.string().nullable(),
        unit: z.string(),
        sign: z.string(),
        units: whole,
        places: whole.nullable(),
        share,
        source: z.string(),
      })
      .describe('What to look at in the field, how much of it, and the figure it is held against.'),
    z.object({
      kind: z.literal('trend'),
      design: trapDesignSchema,
      direction: z.enum(['rising', 'falling', 'unclear']),
      perNight: z.number(),
      low: z.number(),
      high: z.number(),
      level: share,
      visits: whole,
    }),
    z.object({
      kind: z.literal('question'),
      question: z.enum(['count-went-down', 'many-look-alikes']),
      trapId: z.string(),
      on: isoDay,
      got: whole,
      before: whole,
    }),
  ])
  .meta({ id: 'Evidence', description: 'A record or number that a verb rests on, told from others by its kind.' });
export type Evidence = Shape<typeof evidenceSchema>;

export const cautionSchema = z
  .discriminatedUnion('kind', [
    z
      .object({ kind: z.literal('label-and-adviser') })
      .describe('The label is the law; a licensed adviser decides with the grower.'),
    z.object({ kind: z.literal('bees') }),
    z.object({
      kind: z.literal('reentry'),
      until: isoDay,
      at: z.string().optional().describe('Time of day at which it ends, where the hour of application was written down.'),
      hours: z.number(),
      product: z.string(),
    }),
    z.object({
      kind: z.literal('preharvest'),
      earliestHarvest: isoDay,
      harvestOn: isoDay.nullable(),
      product: z.string(),
    }),
    z.object({ kind: z.literal('reads-low'), why: z.enum(['spent-lure', 'doubtful-check']) }),
    z.object({ kind: z.literal('threshold-is-estimate') }),
    z.object({ kind: z.literal('rule-from-elsewhere'), region: z.string() }),
    z.object({ kind: z.literal('rule-design-unstated') }),
    z.object({ kind: z.literal('designs-not-pooled'), designs: z.array(trapDesignSchema) }),
    z.object({ kind: z.literal('few-nights'), trapNights: whole }),
    z
      .object({ kind: z.literal('nothing-caught'), upTo: z.number(), level: share, thresholdPerNight: z.number() })
      .describe('Nothing was caught, but up to `upTo` a night would still fit that, and the rule’s figure lies below.'),
    z.object({ kind: z.literal('stage-old'), ageDays: whole }),
  ])
  .meta({ id: 'Caution', description: 'What to know, or to beware of, before acting on the verb.' });
export type Caution = Shape<typeof cautionSchema>;

export const ruleReferenceSchema = z
  .object({
    id: z.string(),
    kind: z.enum(['catch-threshold', 'catch-table', 'infestation', 'heat-scout']),
    region: z.string(),
    may: z.enum(['decide', 'send-scouting']).describe('What the rule may do once its figure is reached.'),
    standing: standingSchema,
  })
  .meta({ id: 'RuleReference' });
export type RuleReference = Shape<typeof ruleReferenceSchema>;

export const adviceSchema = z
  .object({
    field: z.string().describe('field_id'),
    insect: z.string(),
    verb: verbSchema,
    by: isoDay.nullable().describe('The date the verb is good for: next check, scout by, decide by, covered until.'),
    dueSince: isoDay
      .nullable()
      .describe(
        'The day since which what the verb asks for has been due, and nobody has answered it by a treatment, a sample, a visit or a recorded decision; `by` is then the day of asking. Null while it is not due yet.',
      ),
    rate: z.number().nullable().describe('Moths per trap per night behind the verb; null when there is none to show.'),
    interval: z.tuple([z.number(), z.number()]).nullable().describe('Low and high of the rate.'),
    intervalDays: z
      .number()
      .nullable()
      .describe('Days between protective decisions that the rule gives; null when it gives none.'),
    probabilityAbove: share.nullable().describe('Probability that the true rate is above the threshold of the rule.'),
    because: z.array(evidenceSchema).describe('The records and numbers that the verb rests on.'),
    cautions: z.array(cautionSchema),
    confidence: confidenceSchema.nullable(),
    rule: ruleReferenceSchema.nullable(),
    source: z.string().nullable(),
  })
  .meta({ id: 'Advice', description: 'The verb for one field and insect, its date and what it rests on.' });
export type Advice = Shape<typeof adviceSchema>;

export type { CatchInterval, NoInformation };
