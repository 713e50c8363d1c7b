/** What a program still lacks before it can give advice, and before that advice is as sure as it can be. */
import { z } from 'zod';
import { stageOf } from '../advice/crop-stage.ts';
import { adviseCell } from '../advice/decide.ts';
import { hanging } from '../advice/due.ts';
import { type Prepared, weatherSourceOf } from '../advice/prepare.ts';
import { addDays, formatDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import { isoDay } from '../records/schema.ts';
import { weatherSourcesView } from './weather-sources.ts';
import { inThisYear } from './week.ts';

export const FIRST_STEPS = ['fields', 'places', 'traps', 'stages', 'weather', 'lures', 'checks'] as const;
export type FirstStep = (typeof FIRST_STEPS)[number];

export const firstStepsSchema = z
  .object({
    on: isoDay,
    beginning: z
      .boolean()
      .describe(
        'True until a field has been told more than that nothing can be seen, or the program has counted for two months.',
      ),
    steps: z.array(
      z.object({
        step: z.enum(FIRST_STEPS),
        done: z.int().describe('Of those that there are to do.'),
        of: z.int().describe('0 while the step before has brought nothing to do it for.'),
        needed: z.boolean().describe('Without it there is no advice; the others make it surer.'),
      }),
    ),
  })
  .meta({ id: 'FirstSteps' });
export type FirstStepsView = Shape<typeof firstStepsSchema>;

/** A program that has counted for so long has begun, whatever season it is. */
const BEGUN_DAYS = 60;

export function firstStepsView(prepared: Prepared): FirstStepsView {
  const fields = prepared.program.fields.filter((field) => inThisYear(prepared, field));
  const traps = hanging(prepared, [...prepared.traps.values()]);
  const informed = new Set(traps.flatMap(({ informs }) => informs));
  const on = formatDay(prepared.on);
  const waiting = new Set(
    weatherSourcesView(prepared.program, on).sources.flatMap(({ sourceId, waiting }) => (waiting ? [sourceId] : [])),
  );
  const hasWeather = (field: (typeof fields)[number]) => {
    const source = weatherSourceOf(prepared, field);
    return source !== null && !waiting.has(source);
  };
  const counted = (trapId: string) => (prepared.checksByTrap.get(trapId) ?? []).some(({ checkedOn }) => checkedOn <= on);
  const step = (step: FirstStep, all: readonly boolean[], needed = false) => ({
    step,
    done: all.filter(Boolean).length,
    of: all.length,
    needed,
  });
  return {
    on,
    beginning: !hasBegun(prepared, fields),
    steps: [
      step('fields', fields.length === 0 ? [false] : fields.map(() => true), true),
      step(
        'places',
        fields.map(({ latitude, longitude }) => latitude !== null && longitude !== null),
      ),
      step(
        'traps',
        fields.map(({ fieldId }) => informed.has(fieldId)),
        true,
      ),
      step(
        'stages',
        fields.map((field) => stageOf(prepared, field) !== null),
      ),
      step('weather', fields.map(hasWeather)),
      step(
        'lures',
        traps.map(({ trapId }) => prepared.luresByTrap.has(trapId)),
      ),
      step(
        'checks',
        traps.map(({ trapId }) => counted(trapId)),
        true,
      ),
    ],
  };
}

function hasBegun(prepared: Prepared, fields: Prepared['program']['fields']): boolean {
  const longAgo = formatDay(addDays(prepared.on, -BEGUN_DAYS));
  if (prepared.program.checks.some(({ checkedOn }) => checkedOn <= longAgo)) return true;
  return fields.some(({ fieldId }) =>
    prepared.insects.some((insect) => !['blind', 'none'].includes(adviseCell(prepared, fieldId, insect).verb)),
  );
}
