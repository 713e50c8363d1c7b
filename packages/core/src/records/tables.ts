/**
 * The tables of a program folder, each defined once: reading, writing and the published Table Schema all come
 * from here. Types and limits are those of the Zod schemas.
 */
import type { z } from 'zod';
import { type ColumnWords, columnWords } from './column-words.ts';
import { type Column, describeColumn, keyOf } from './columns.ts';
import { RECORD_KINDS, type RecordKind, recordSchemas } from './program.ts';

export interface ForeignKey {
  readonly column: string;
  readonly table: RecordKind;
}

export interface Table<K extends RecordKind = RecordKind> {
  readonly kind: K;
  readonly file: string;
  readonly about: string;
  /** A program without it is not a program. */
  readonly required: boolean;
  readonly columns: readonly Column[];
  /** Columns that together tell one row from another; empty where the order of rows does (checks). */
  readonly primaryKey: readonly string[];
  readonly foreignKeys: readonly ForeignKey[];
}

function table<K extends RecordKind>(
  kind: K,
  about: string,
  keys: { primary: readonly string[]; foreign?: readonly ForeignKey[]; required?: boolean },
): Table<K> {
  const shape = recordSchemas[kind].shape as Readonly<Record<string, z.ZodType>>;
  const words: Readonly<Record<string, ColumnWords>> = columnWords[kind];
  const columns = Object.entries(words).map(([name, told]) => {
    const [text, hints] = typeof told === 'string' ? [told, {}] : told;
    return describeColumn(name, text, shape[keyOf(name)]!, hints);
  });
  const { primary, foreign = [], required = false } = keys;
  return { kind, file: `${kind}.csv`, about, required, columns, primaryKey: primary, foreignKeys: foreign };
}

const ofField: ForeignKey = { column: 'field_id', table: 'fields' };
const ofTrap: ForeignKey = { column: 'trap_id', table: 'traps' };

export const tables: { readonly [K in RecordKind]: Table<K> } = {
  fields: table('fields', 'Fields, each with one crop planting.', { primary: ['field_id'], required: true }),
  stages: table('stages', 'Crop stages as seen in the field.', { primary: ['field_id', 'observed_on'], foreign: [ofField] }),
  traps: table('traps', 'Traps, each for one insect, from the day it is hung to the day it is taken down.', {
    primary: ['trap_id'],
    required: true,
  }),
  lures: table('lures', 'Lures as placed.', { primary: ['trap_id', 'placed_on'], foreign: [ofTrap] }),
  checks: table('checks', 'Visits to traps. Several visits to one trap on one day stand in the order they were made.', {
    primary: [],
    foreign: [ofTrap],
    required: true,
  }),
  skips: table(
    'skips',
    'Traps that were due and passed by, and why. Not a visit: nothing follows from it about moths or nights.',
    {
      primary: ['trap_id', 'skipped_on'],
      foreign: [ofTrap],
    },
  ),
  sources: table('sources', 'Weather sources: where each is, what its days are, and where they come from.', {
    primary: ['source_id'],
  }),
  weather: table('weather', 'Daily extremes and rain. Temperatures in °C; tmin_f and tmax_f (°F) are read in their place.', {
    primary: ['source_id', 'date'],
  }),
  normals: table('normals', 'Monthly means of the daily extremes at a weather source, where it has too few years of its own.', {
    primary: ['source_id', 'month'],
  }),
  samples: table('samples', 'Scouting samples: what was found on the plants.', {
    primary: ['field_id', 'insect', 'sampled_on', 'kind'],
    foreign: [ofField],
  }),
  treatments: table('treatments', 'Treatments as recorded; intervals are those of the label the user read.', {
    primary: ['field_id', 'insect', 'applied_on', 'product'],
    foreign: [ofField],
  }),
  decisions: table(
    'decisions',
    'Answers to a decision or to scouting that was due, where they were not a treatment or a sample.',
    {
      primary: ['field_id', 'insect', 'decided_on', 'decision'],
      foreign: [ofField],
    },
  ),
  rules: table('rules', "The program's own rules; they go before the catalogue's.", { primary: ['rule_id'] }),
  seasons: table('seasons', 'Seasons that are planned. What is left empty is proposed.', { primary: ['season'] }),
  plans: table('plans', 'What is decided for an insect in a season, everywhere or in one area. What is left empty is proposed.', {
    primary: ['season', 'insect', 'area'],
  }),
  prices: table('prices', 'What one unit costs the program.', { primary: ['item', 'of'] }),
  stock: table('stock', 'Lures and traps in store.', { primary: ['stock_id'] }),
  answers: table('answers', 'What people answered to questions about the records, so that nothing is asked twice.', {
    primary: ['question'],
  }),
};

export const allTables: readonly Table[] = RECORD_KINDS.map((kind) => tables[kind]);
