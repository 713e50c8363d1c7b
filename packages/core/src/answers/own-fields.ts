/** A grower's own fields, one line each: the most urgent of what is said of them, and what else is to be done there. */
import { stageOf } from '../advice/crop-stage.ts';
import { adviseCell } from '../advice/decide.ts';
import type { Prepared } from '../advice/prepare.ts';
import type { Advice } from '../advice/types.ts';
import { formatDay } from '../base/day.ts';
import type { FieldRecord } from '../records/schema.ts';
import type { OwnField, OwnFieldsView } from './own-fields-schema.ts';
import { inThisYear, newestCheck } from './week.ts';

/** From here on nothing is to be done or known: traps are checked, or nobody could say more by looking. */
const RESTS = 4;

/** What can be acted on comes first; what no rule judges cannot be acted on, and comes after what is watched. */
function rank({ verb, by, dueSince }: Pick<Advice, 'verb' | 'by' | 'dueSince'>): number {
  switch (verb) {
    case 'decide':
      return 0;
    case 'scout':
      return 1;
    case 'blind':
      return by === null && dueSince === null ? RESTS + 1 : 2;
    case 'covered':
      return 3;
    case 'watch':
      return RESTS;
    case 'none':
      return RESTS + 2;
  }
}

const LAST = '9999';
const byUrgency = (a: Advice, b: Advice) =>
  rank(a) - rank(b) ||
  (a.dueSince ?? a.by ?? LAST).localeCompare(b.dueSince ?? b.by ?? LAST) ||
  (b.probabilityAbove ?? 0) - (a.probabilityAbove ?? 0);

/** @param prepared the part of the program that the person may know: for a grower, the fields of own farms. */
export function ownFieldsView(prepared: Prepared): OwnFieldsView {
  const fields = prepared.program.fields
    .filter((field) => inThisYear(prepared, field))
    .map((field) => ownField(prepared, field))
    .filter((field) => field !== null)
    .sort((a, b) => byUrgency(a.lead, b.lead) || a.name.localeCompare(b.name));
  const { name, invented } = prepared.program.settings;
  return {
    program: { name, invented },
    on: formatDay(prepared.on),
    countsTo: newestCheck(prepared),
    acting: fields.filter(({ lead }) => rank(lead) < RESTS),
    resting: fields.filter(({ lead }) => rank(lead) >= RESTS),
  };
}

/** Null while the program follows no insect at all. */
function ownField(prepared: Prepared, field: FieldRecord): OwnField | null {
  const advice = prepared.insects.map((insect) => adviseCell(prepared, field.fieldId, insect)).sort(byUrgency);
  const [lead, ...others] = advice;
  if (!lead) return null;
  const stage = stageOf(prepared, field);
  const { fieldId, name, farm, crop, growthHabit } = field;
  const checks = advice.filter(({ verb }) => verb === 'watch').flatMap(({ by }) => by ?? []);
  return {
    fieldId,
    name,
    farm,
    crop,
    growthHabit,
    stage: stage && { stage: stage.written, observedOn: stage.observedOn },
    lead,
    further: others
      .filter((each) => rank(each) < RESTS)
      .map(({ insect, verb, by, dueSince }) => ({ insect, verb, by, dueSince })),
    nextCheck: checks.sort()[0] ?? null,
  };
}
