/** A field, a trap or a weather source under another identifier, and everything that names it. */
import { foldText } from '../base/find.ts';
import type { Program, RecordKind, RecordOf } from './program.ts';

export const RENAMED_KINDS = ['fields', 'traps', 'sources'] as const satisfies readonly RecordKind[];
export type RenamedKind = (typeof RENAMED_KINDS)[number];

/** One record as it was and as it is to be. */
export interface Renamed<K extends RecordKind = RecordKind> {
  readonly kind: K;
  readonly before: RecordOf<K>;
  readonly after: RecordOf<K>;
}

type Change = { readonly [K in RecordKind]?: (record: RecordOf<K>) => RecordOf<K> };

/** What changes in each kind of record where one of these is renamed; a record that does not name it stays the same value. */
function changesOf(kind: RenamedKind, from: string, to: string): Change {
  const inList = (ids: readonly string[]) => (ids.includes(from) ? ids.map((id) => (id === from ? to : id)) : null);
  const ofField = <R extends { readonly fieldId: string }>(record: R): R =>
    record.fieldId === from ? { ...record, fieldId: to } : record;
  const ofTrap = <R extends { readonly trapId: string }>(record: R): R =>
    record.trapId === from ? { ...record, trapId: to } : record;
  const ofSource = <R extends { readonly sourceId: string }>(record: R): R =>
    record.sourceId === from ? { ...record, sourceId: to } : record;
  switch (kind) {
    case 'fields':
      return {
        fields: ofField,
        stages: ofField,
        samples: ofField,
        treatments: ofField,
        decisions: ofField,
        traps: (trap) => {
          const informs = inList(trap.informs);
          return informs === null ? trap : { ...trap, informs };
        },
        seasons: (season) => {
          const fields = inList(season.fields);
          return fields === null ? season : { ...season, fields };
        },
        plans: (plan) => (plan.area === from ? { ...plan, area: to } : plan),
      };
    case 'traps':
      return { traps: ofTrap, lures: ofTrap, checks: ofTrap, skips: ofTrap };
    case 'sources':
      return {
        sources: (source) => {
          const named = ofSource(source);
          return named.fillFrom === from ? { ...named, fillFrom: to } : named;
        },
        weather: ofSource,
        normals: ofSource,
        fields: (field) => (field.weatherSource === from ? { ...field, weatherSource: to } : field),
      };
  }
}

/** Every record that a new identifier changes: the one it is of first, then those that name it. */
export function renamed(program: Program, kind: RenamedKind, from: string, to: string): Renamed[] {
  const changes = changesOf(kind, from, to);
  const kinds = [kind, ...(Object.keys(changes) as RecordKind[]).filter((each) => each !== kind)];
  return kinds.flatMap((each) => {
    const change = changes[each] as (record: unknown) => unknown;
    return (program[each] as readonly unknown[]).flatMap((before) => {
      const after = change(before);
      return after === before ? [] : [{ kind: each, before, after } as Renamed];
    });
  });
}

/** Whether the identifier is taken: a source has one as soon as it has a day. */
export const isTaken = ({ fields, traps, sources, weather }: Program, kind: RenamedKind, id: string): boolean =>
  kind === 'fields'
    ? fields.some(({ fieldId }) => fieldId === id)
    : kind === 'traps'
      ? traps.some(({ trapId }) => trapId === id)
      : [...sources, ...weather].some(({ sourceId }) => sourceId === id);

/** An identifier made of names, as short as they are: `brook-meadow`. Another of the same gets a number. */
export function identifierOf(names: readonly string[], isTaken: (id: string) => boolean): string {
  const plain = foldText(names.join(' '))
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, LONGEST)
    .replace(/-+$/, '');
  if (plain === '') return '';
  for (let n = 1; ; n++) {
    const id = n === 1 ? plain : `${plain}-${n}`;
    if (!isTaken(id)) return id;
  }
}

const LONGEST = 60;
