/** How each property of each kind is asked for, where its column alone does not say. */
import {
  canonicalCrop,
  catalogue,
  cropById,
  DECISION_REASONS,
  PRICED,
  type PricedItem,
  RATE_UNITS,
  type RecordKind,
  TRAP_DESIGNS,
  WEEKDAYS,
  type Wording,
} from '@duskwatch/core';
import { cropName, localName, sampleKind } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import type { ControlKind, Option } from './Control.tsx';
import type { Around } from './form-texts.ts';
import { SAMPLED_UNITS } from './SamplingAside.tsx';

type Controls = Readonly<Record<string, ControlKind>>;

const distinct = (texts: readonly (string | null)[]): Option[] =>
  [...new Set(texts.filter((text) => text !== null && text !== ''))].sort().map((text) => ({ value: text!, label: text! }));

/** What a rule may ask to be looked at; a word of the record's own stays a choice. */
const sampled = (own: string): Option[] =>
  [...new Set([...SAMPLED_UNITS, ...(own === '' ? [] : [own])])].map((kind) => ({ value: kind, label: sampleKind(kind) }));

/** Every insect of the catalogue, and any other by its scientific name. */
const insects = (wording: Wording, own: readonly string[]): ControlKind => {
  const all = [...new Set([...catalogue.insects.map(({ id }) => id), ...own])];
  return { as: 'insect', options: all.map((id) => ({ value: id, label: wording.insect(id) })) };
};

const designs = (wording: Wording): ControlKind => ({
  as: 'chips',
  options: TRAP_DESIGNS.map((design) => ({ value: design, label: wording.design[design] })),
});

const byFarm = (fields: NonNullable<Around['fields']>): Option[] =>
  [...fields]
    .sort((a, b) => a.farm.localeCompare(b.farm) || a.name.localeCompare(b.name))
    .map(({ fieldId, name, farm }) => ({ value: fieldId, label: name, group: farm }));

const wordsOf = (names: Readonly<Record<string, string>>): Option[] =>
  Object.entries(names).map(([value, label]) => ({ value, label }));

const itemsOf = (items: readonly PricedItem[]): Option[] =>
  items.map((item) => ({ value: item, label: recordWords.items[item] }));

/** What a price or a package is of, where what it is of is known. */
function ofChoice(item: unknown, wording: Wording): ControlKind {
  const any = { value: 'any', label: recordWords.any };
  const insects = catalogue.insects.map(({ id }) => ({ value: id, label: wording.insect(id) }));
  const traps = TRAP_DESIGNS.map((design) => ({ value: design, label: wording.design[design] }));
  if (item === 'lure') return { as: 'select', options: [any, ...insects] };
  if (item === 'trap') return { as: 'select', options: [any, ...traps] };
  return { as: 'suggest', options: [any] };
}

/**
 * @param held what the record says now, so that a word of its own stays a choice
 */
export function controlsFor(kind: RecordKind, held: object, { fields = [], traps = [] }: Around, wording: Wording): Controls {
  const said = held as Readonly<Record<string, unknown>>;
  const own = traps.map((trap) => trap.insect);
  const insect = insects(wording, typeof said.insect === 'string' && said.insect !== '' ? [...own, said.insect] : own);
  switch (kind) {
    case 'fields':
      return {
        farm: { as: 'suggest', options: distinct(fields.map(({ farm }) => farm)) },
        crop: {
          as: 'suggest',
          options: catalogue.crops.map(({ id, name }) => ({ value: id, label: localName(name) })),
        },
        growthHabit: { as: 'suggest', options: distinct(['bush', 'vining']) },
        timeZone: { as: 'suggest', options: distinct(fields.map(({ timeZone }) => timeZone)) },
        weatherSource: { as: 'suggest', options: distinct(fields.map(({ weatherSource }) => weatherSource)) },
      };
    case 'stages': {
      const crop = fields.find(({ fieldId }) => fieldId === said.fieldId)?.crop;
      const stages = crop === undefined ? [] : (cropById(canonicalCrop(crop))?.stages ?? []);
      if (stages.length === 0) return {};
      const options = stages.map(({ id, name }) => ({ value: id, label: localName(name) }));
      const own = typeof said.stage === 'string' && !stages.some(({ id }) => id === said.stage) ? distinct([said.stage]) : [];
      return { stage: { as: 'chips', options: [...options, ...own] } };
    }
    case 'traps':
      return {
        station: { as: 'suggest', options: distinct(traps.map(({ station }) => station)) },
        insect,
        design: designs(wording),
        informs: { as: 'several', options: byFarm(fields) },
      };
    case 'checks':
      return {
        note: { as: 'long' },
        photo: { as: 'photo' },
      };
    case 'sources':
      return {
        kind: { as: 'select', options: wordsOf(recordWords.sourceKinds) },
        service: { as: 'select', options: wordsOf(recordWords.services) },
        timeZone: { as: 'suggest', options: distinct(fields.map(({ timeZone }) => timeZone)) },
      };
    case 'skips':
      return { note: { as: 'long' } };
    case 'samples':
      return {
        insect,
        kind: { as: 'chips', options: sampled(typeof said.kind === 'string' ? said.kind : '') },
        photo: { as: 'photo' },
      };
    case 'treatments':
      return {
        insect,
        productUnknown: { as: 'tick' },
        appliedAt: { as: 'time' },
        rateUnit: { as: 'select', options: RATE_UNITS.map((unit) => ({ value: unit, label: recordWords.rateUnits[unit] })) },
      };
    case 'decisions':
      return {
        insect,
        reason: { as: 'select', options: DECISION_REASONS.map((each) => ({ value: each, label: wording.decisionReason[each] })) },
        note: { as: 'long' },
      };
    case 'seasons':
      return {
        insects: { as: 'several', options: catalogue.insects.map(({ id }) => ({ value: id, label: wording.insect(id) })) },
        crops: {
          as: 'several',
          options: distinct(fields.map(({ crop }) => crop)).map(({ value }) => ({ value, label: cropName(value) })),
        },
        fields: { as: 'several', options: byFarm(fields) },
        checkWeekdays: { as: 'several', options: WEEKDAYS.map((day) => ({ value: day, label: recordWords.weekdays[day] })) },
      };
    case 'plans':
      return { insect, design: designs(wording), note: { as: 'long' } };
    case 'prices':
      return { item: { as: 'select', options: itemsOf(PRICED) }, of: ofChoice(said.item, wording), note: { as: 'long' } };
    case 'stock':
      return {
        item: { as: 'chips', options: itemsOf(['lure', 'trap']) },
        of: ofChoice(said.item, wording),
        storage: { as: 'long' },
      };
    case 'rules': {
      const crop = typeof said.crop === 'string' ? cropById(canonicalCrop(said.crop)) : null;
      return {
        crop: { as: 'suggest', options: catalogue.crops.map(({ id, name }) => ({ value: id, label: localName(name) })) },
        insect,
        design: { as: 'select', options: TRAP_DESIGNS.map((design) => ({ value: design, label: wording.design[design] })) },
        ...(crop && {
          stages: { as: 'several', options: crop.stages.map(({ id, name }) => ({ value: id, label: localName(name) })) },
        }),
        per: { as: 'chips', options: wordsOf(recordWords.per) },
        may: { as: 'chips', options: wordsOf(recordWords.may) },
      };
    }
    default:
      return {};
  }
}
