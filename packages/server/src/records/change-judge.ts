/** A program as it would be with revisions that are about to be kept, and what would be wrong with it then. */
import {
  type CheckRecord,
  catalogueWords,
  checkProgram,
  emptyProgram,
  type FieldRecord,
  type LureRecord,
  naturalKey,
  type Problem,
  type Program,
  type RecordKind,
  type RecordOf,
  type TrapRecord,
  type WeatherRecord,
} from '@duskwatch/core';
import type { StoredKind, ValueOf } from '@duskwatch/store';

type OfField = 'stages' | 'samples' | 'treatments' | 'decisions';
/** Records that refer to no other and belong to none. */
const ALONE = ['sources', 'rules', 'seasons', 'plans', 'prices', 'stock', 'answers'] as const satisfies readonly RecordKind[];
type Alone = (typeof ALONE)[number];
type Value = ValueOf<StoredKind>;

/** What a change may touch: the records of some traps, fields and weather sources, and those that stand alone, by key. */
interface Around {
  readonly traps: Set<string>;
  readonly fields: Set<string>;
  readonly sources: Set<string>;
  readonly alone: { readonly [K in Alone]: Set<string> };
}

/**
 * Judges changes one after the other, each on top of those before it, by `checkProgram` over what lies around the
 * change and not over the whole program.
 */
export class ChangeJudge {
  private readonly fields: Map<string, FieldRecord>;
  private readonly traps: Map<string, TrapRecord>;
  private readonly alone: { readonly [K in Alone]: Map<string, RecordOf<K>> };
  private readonly byOwner: {
    readonly [K in 'checks' | 'lures' | 'skips' | 'weather' | 'normals' | OfField]: Map<string, RecordOf<K>[]>;
  };

  constructor(program: Program) {
    this.fields = new Map(program.fields.map((field) => [field.fieldId, field]));
    this.traps = new Map(program.traps.map((trap) => [trap.trapId, trap]));
    const byKey = <K extends Alone>(kind: K) =>
      new Map(program[kind].map((record) => [keyOf(kind, record), record as RecordOf<K>]));
    this.alone = {
      sources: byKey('sources'),
      rules: byKey('rules'),
      seasons: byKey('seasons'),
      plans: byKey('plans'),
      prices: byKey('prices'),
      stock: byKey('stock'),
      answers: byKey('answers'),
    };
    this.byOwner = {
      checks: group(program.checks, (check) => check.trapId),
      lures: group(program.lures, (lure) => lure.trapId),
      skips: group(program.skips, (skip) => skip.trapId),
      stages: group(program.stages, (stage) => stage.fieldId),
      samples: group(program.samples, (sample) => sample.fieldId),
      treatments: group(program.treatments, (treatment) => treatment.fieldId),
      decisions: group(program.decisions, (decision) => decision.fieldId),
      weather: group(program.weather, (weather) => weather.sourceId),
      normals: group(program.normals, (normal) => normal.sourceId),
    };
  }

  /**
   * Puts a value (null: a removal) in the place of what stands at the key that its writer edited (null: nothing),
   * when that makes nothing wrong that was right before; otherwise leaves all as it is and says what would be wrong.
   */
  change(kind: StoredKind, editedKey: string | null, to: Value | null): Problem[] {
    if (kind === 'settings') return [];
    const from = editedKey === null ? null : this.at(kind, editedKey);
    const around = aroundOf(kind, [from, to]);
    const before = this.cutOut(kind, around);
    const holder = to === null ? null : this.at(kind, keyOf(kind, to));
    this.remove(kind, from);
    this.remove(kind, to);
    this.insert(kind, to);
    const after = checkProgram(this.cutOut(kind, around), { words: catalogueWords });
    if (after.length === 0) return [];
    const known = new Set(checkProgram(before, { words: catalogueWords }).map((problem) => JSON.stringify(problem)));
    const problems = after.filter((problem) => !known.has(JSON.stringify(problem)));
    if (problems.length === 0) return [];
    this.remove(kind, to);
    this.insert(kind, holder);
    this.insert(kind, from);
    return problems;
  }

  private at(kind: RecordKind, key: string): Value | null {
    return this.listOf(kind, key).find((record) => keyOf(kind, record) === key) ?? null;
  }

  private listOf(kind: RecordKind, key: string): readonly Value[] {
    const keyed = this.keyed(kind);
    if (keyed) return [keyed.get(key)].filter((one) => one !== undefined);
    return this.byOwner[kind as keyof ChangeJudge['byOwner']].get(ownerOf(key)) ?? [];
  }

  /** Records held each by its own key; null for those held by their owner. */
  private keyed(kind: RecordKind): Map<string, Value> | null {
    if (kind === 'fields' || kind === 'traps') return this[kind] as Map<string, Value>;
    return isAlone(kind) ? (this.alone[kind] as Map<string, Value>) : null;
  }

  private remove(kind: RecordKind, value: Value | null): void {
    if (value === null) return;
    const key = keyOf(kind, value);
    const keyed = this.keyed(kind);
    if (keyed) keyed.delete(key);
    else {
      const owned = this.byOwner[kind as keyof ChangeJudge['byOwner']] as Map<string, Value[]>;
      owned.set(
        ownerOf(key),
        (owned.get(ownerOf(key)) ?? []).filter((record) => keyOf(kind, record) !== key),
      );
    }
  }

  private insert(kind: RecordKind, value: Value | null): void {
    if (value === null) return;
    this.remove(kind, value);
    const key = keyOf(kind, value);
    const keyed = this.keyed(kind);
    if (keyed) keyed.set(key, value);
    else {
      const owned = this.byOwner[kind as keyof ChangeJudge['byOwner']] as Map<string, Value[]>;
      owned.set(ownerOf(key), [...(owned.get(ownerOf(key)) ?? []), value]);
    }
  }

  private cutOut(kind: RecordKind, { traps, fields, sources, alone }: Around): Program {
    const owned = <K extends keyof ChangeJudge['byOwner']>(of: K, owners: Iterable<string>) =>
      [...owners].flatMap((owner) => (this.byOwner[of].get(owner) ?? []) as RecordOf<K>[]);
    const ofFields = kind === 'fields';
    const whole = ofFields || kind === 'traps';
    const informing = ofFields ? [...this.traps.values()].filter((trap) => trap.informs.some((field) => fields.has(field))) : [];
    const held = [...pick(this.traps, traps), ...informing].map((trap) => ({
      ...trap,
      informs: whole ? trap.informs.filter((field) => fields.has(field)) : [],
    }));
    return {
      ...emptyProgram(),
      fields: pick(this.fields, fields).map((field) => (ofFields ? field : { ...field, weatherSource: null })),
      traps: held,
      ...Object.fromEntries(ALONE.map((one) => [one, pick(this.alone[one] as Map<string, Value>, alone[one])])),
      checks: owned('checks', traps) as CheckRecord[],
      lures: owned('lures', traps) as LureRecord[],
      skips: owned('skips', traps),
      stages: owned('stages', fields),
      samples: owned('samples', fields),
      treatments: owned('treatments', fields),
      decisions: owned('decisions', fields),
      weather: ofFields ? this.oneOfEachSource() : owned('weather', sources),
      normals: owned('normals', sources),
    };
  }

  private oneOfEachSource(): WeatherRecord[] {
    return [...this.byOwner.weather.values()].flatMap((records) => records.slice(0, 1));
  }
}

function aroundOf(kind: RecordKind, values: readonly (Value | null)[]): Around {
  const around: Around = {
    traps: new Set(),
    fields: new Set(),
    sources: new Set(),
    alone: {
      sources: new Set(),
      rules: new Set(),
      seasons: new Set(),
      plans: new Set(),
      prices: new Set(),
      stock: new Set(),
      answers: new Set(),
    },
  };
  for (const value of values) {
    if (value === null) continue;
    if ('trapId' in value) around.traps.add(value.trapId);
    if ('fieldId' in value) around.fields.add(value.fieldId);
    if (kind === 'traps') for (const field of (value as TrapRecord).informs) around.fields.add(field);
    if ('sourceId' in value) around.sources.add(value.sourceId);
    if (isAlone(kind)) around.alone[kind].add(keyOf(kind, value));
  }
  return around;
}

const isAlone = (kind: RecordKind): kind is Alone => (ALONE as readonly RecordKind[]).includes(kind);

const keyOf = (kind: RecordKind, value: Value): string => (naturalKey[kind] as (record: unknown) => string)(value);

/** The id before the first `|` of a natural key: no id holds one. */
const ownerOf = (key: string): string => key.slice(0, key.indexOf('|'));

const pick = <T>(all: ReadonlyMap<string, T>, ids: Iterable<string>): T[] =>
  [...ids].map((id) => all.get(id)).filter((found) => found !== undefined);

function group<T>(records: readonly T[], owner: (record: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const record of records) {
    const key = owner(record);
    const group = groups.get(key);
    if (group) group.push(record);
    else groups.set(key, [record]);
  }
  return groups;
}
