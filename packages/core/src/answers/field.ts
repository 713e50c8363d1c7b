/** One field's season on one time axis. */
import { checkEvidence } from '../advice/catch-evidence.ts';
import { adviseCell } from '../advice/decide.ts';
import { type EventEvidence, eventAt, type ModelHeat, modelHeat } from '../advice/phenology.ts';
import {
  cellKey,
  growingYearStart,
  heatOf,
  historyOf,
  type Prepared,
  trapsThisSeason,
  weatherSourceOf,
} from '../advice/prepare.ts';
import { addDays, type Day, day, formatDay } from '../base/day.ts';
import { modelsFor } from '../catalogue/index.ts';
import type { PhenologyModel } from '../catalogue/types.ts';
import type { FieldRecord, TrapRecord } from '../records/schema.ts';
import { earlierSeasons } from './earlier-seasons.ts';
import { decisionsAhead, otherwise, rulesShown } from './field-outlook.ts';
import type { CheckMark, FieldInsectView, FieldView, HeatStrip } from './field-schema.ts';
import { rateLines } from './rate-line.ts';
import { sampleShown } from './sample-shown.ts';
import { insectName } from './week.ts';

/** Days shown after today, so that what is expected next has room on the axis. */
const AHEAD_DAYS = 28;

/** The season of one field as known on the prepared day; null when the program has no such field. */
export function fieldView(prepared: Prepared, fieldId: string): FieldView | null {
  const field = prepared.fields.get(fieldId);
  if (!field) return null;
  const { name, invented } = prepared.program.settings;
  const { farm, crop, growthHabit, plantedOn, harvestOn } = field;
  const start = formatDay(growingYearStart(field, prepared.on));
  const stages = (prepared.stagesByField.get(fieldId) ?? []).filter((stage) => stage.observedOn >= start);
  const insects = prepared.insects.map((insect) => insectView(prepared, field, insect));
  const dates = [
    formatDay(prepared.on),
    ...insects.flatMap(({ traps }) => traps.map((trap) => trap.hungOn)),
    ...stages.map((stage) => stage.observedOn),
    ...(plantedOn === null ? [] : [plantedOn]),
  ];
  const earliest = dates.filter((date) => date >= start).sort()[0]!;
  return {
    program: { name, invented },
    on: formatDay(prepared.on),
    field: { fieldId, name: field.name, farm, crop, growthHabit, plantedOn, harvestOn },
    from: formatDay(addDays(day(earliest), -3)),
    to: formatDay(addDays(prepared.on, AHEAD_DAYS)),
    stages: stages.map(({ stage, observedOn }) => ({ stage, observedOn })),
    insects,
  };
}

function insectView(prepared: Prepared, field: FieldRecord, insect: string): FieldInsectView {
  const traps = trapsThisSeason(prepared, field, insect);
  const today = formatDay(prepared.on);
  const start = formatDay(growingYearStart(field, prepared.on));
  const key = cellKey(field.fieldId, insect);
  const advice = adviseCell(prepared, field.fieldId, insect);
  const rules = rulesShown(prepared, field, insect, advice);
  return {
    insect: insectName(insect),
    advice,
    lines: rateLines(prepared, field, insect),
    earlierSeasons: earlierSeasons(prepared, field, insect),
    checks: traps.flatMap((trap) => checkMarks(prepared, trap)),
    traps: traps.map(({ trapId, station, design, hungOn, takenDownOn }) => ({ trapId, station, design, hungOn, takenDownOn })),
    lures: traps.flatMap((trap) =>
      (prepared.luresByTrap.get(trap.trapId) ?? [])
        .filter((lure) => lure.placedOn <= today)
        .map(({ trapId, placedOn, lifeDays }) => ({ trapId, placedOn, lifeDays })),
    ),
    heat: modelsFor(insect)
      .map((model) => heatStrip(prepared, field, model))
      .filter((strip) => strip !== null),
    samples: (prepared.samplesByCell.get(key) ?? [])
      .filter((sample) => sample.sampledOn >= start)
      .map((sample) => ({ ...sampleShown(sample), photo: sample.photo ?? null })),
    treatments: (prepared.treatmentsByCell.get(key) ?? [])
      .filter((treatment) => treatment.appliedOn >= start)
      .map(({ appliedOn, appliedAt, product, protectsDays, rate, rateUnit }) => ({
        appliedOn,
        appliedAt: appliedAt ?? null,
        product,
        rate: rate ?? null,
        rateUnit: rateUnit ?? null,
        protectsUntil: protectsDays === null ? null : formatDay(addDays(day(appliedOn), protectsDays)),
        coversUntil:
          advice.because
            .filter((item) => item.kind === 'treatment')
            .find((item) => item.appliedOn === appliedOn && item.product === product)?.coversUntil ?? null,
      })),
    decisions: (prepared.decisionsByCell.get(key) ?? [])
      .filter(({ decidedOn }) => decidedOn >= start)
      .map(({ decidedOn, decision, reason, note }) => ({ decidedOn, decision, reason, note })),
    rules,
    otherwise: otherwise(advice, rules),
    ahead: decisionsAhead(advice, field, rules, prepared.on),
  };
}

function checkMarks(prepared: Prepared, trap: TrapRecord): CheckMark[] {
  const notes = new Map((prepared.checksByTrap.get(trap.trapId) ?? []).map((check) => [check.checkedOn, check.note]));
  return historyOf(prepared, trap).intervals.map((interval) => {
    const { trapId, to, visits, nights, count, others, condition, lureAgeDays } = checkEvidence(interval);
    const { lurePastLife } = interval;
    return { trapId, on: to, visits, nights, count, others, condition, lureAgeDays, lurePastLife, note: notes.get(to) ?? null };
  });
}

function heatStrip(prepared: Prepared, field: FieldRecord, model: PhenologyModel): HeatStrip | null {
  if (model.start.kind === 'stage') return null;
  const result = modelHeat(prepared, field, model);
  if (result.kind !== 'known') {
    const gap =
      result.kind === 'missing' && result.missing.from !== null ? { from: result.missing.from, to: result.missing.to! } : null;
    return gap ? { ...stripHead(model, gap.from), days: [], events: [], gap } : null;
  }
  const { heat } = result;
  return {
    ...stripHead(model, formatDay(heat.start)),
    days: heatDays(prepared, field, heat),
    events: model.events.map((event) => eventOnStrip(eventAt(heat, event))),
    gap: null,
  };
}

function stripHead(model: PhenologyModel, startsOn: string) {
  const startKind: HeatStrip['startKind'] = model.start.kind === 'calendar' ? 'calendar' : 'biofix';
  const { id: modelId, name: modelName, source, standing } = model;
  return { modelId, modelName, source, standing, unit: model.heat.unit, startsOn, startKind };
}

function eventOnStrip({ event, generation, from, to, status, expected }: EventEvidence) {
  return { event, generation, from, to, status, expected };
}

function heatDays(prepared: Prepared, field: FieldRecord, { model, start, through }: ModelHeat): HeatStrip['days'] {
  const track = heatOf(prepared, weatherSourceOf(prepared, field)!, model.heat);
  const days: { date: string; total: number | null; bridged: boolean }[] = [];
  let bridgedBefore = 0;
  for (let on = start; on <= through; on = addDays(on, 1)) {
    const sum = track.total(start, on as Day);
    const bridged = sum.ok && sum.bridgedDays > bridgedBefore;
    if (sum.ok) bridgedBefore = sum.bridgedDays;
    days.push({ date: formatDay(on), total: sum.ok ? sum.degreeDays : null, bridged });
  }
  return days;
}
