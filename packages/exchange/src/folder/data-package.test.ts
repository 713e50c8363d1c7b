import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { delimiterOf, scanRows } from '../csv/scan-rows.ts';
import { folderOf } from '../testing/folder-of.ts';
import { readProgramFolder } from './read-folder.ts';
import { writeProgramFolder } from './write-folder.ts';

/**
 * The required properties and allowed words of the Data Package standard, version 2
 * (https://datapackage.org/standard/data-package/, …/data-resource/, …/table-schema/), written from the text of the
 * standard and not from the code under test.
 */
const fieldTypes = [
  'string',
  'number',
  'integer',
  'boolean',
  'object',
  'array',
  'list',
  'datetime',
  'date',
  'time',
  'year',
  'yearmonth',
  'duration',
  'geopoint',
  'geojson',
  'any',
] as const;
const constraints = z.strictObject({
  required: z.boolean().optional(),
  unique: z.boolean().optional(),
  minLength: z.int().min(0).optional(),
  maxLength: z.int().min(0).optional(),
  minimum: z.number().optional(),
  maximum: z.number().optional(),
  pattern: z.string().optional(),
  enum: z.array(z.string()).min(1).optional(),
});
const field = z.strictObject({
  name: z.string().min(1),
  type: z.enum(fieldTypes),
  description: z.string().min(1),
  constraints: constraints.optional(),
  delimiter: z.string().optional(),
  itemType: z.enum(['string', 'integer', 'boolean', 'number', 'datetime', 'date', 'time']).optional(),
  trueValues: z.array(z.string()).min(1).optional(),
  falseValues: z.array(z.string()).min(1).optional(),
});
const names = z.array(z.string().min(1)).min(1);
const schema = z.strictObject({
  $schema: z.url(),
  fields: z.array(field).min(1),
  missingValues: z.array(z.string()),
  primaryKey: names.optional(),
  foreignKeys: z
    .array(z.strictObject({ fields: names, reference: z.strictObject({ resource: z.string(), fields: names }) }))
    .optional(),
});
const dataPackageStandard = z.looseObject({
  $schema: z.literal('https://datapackage.org/profiles/2.0/datapackage.json'),
  name: z.string().regex(/^[a-z0-9._-]+$/),
  resources: z
    .array(
      z.strictObject({
        name: z.string().regex(/^[a-z0-9._-]+$/),
        type: z.literal('table'),
        path: z.string().regex(/^(?!\/)(?!.*\.\.)/),
        description: z.string(),
        format: z.string(),
        mediatype: z.string(),
        encoding: z.string(),
        schema,
      }),
    )
    .min(1),
});

const rowsOf = (text: string): string[][] => {
  const rows: string[][] = [];
  scanRows(text, delimiterOf(text), (cells) => rows.push(cells));
  return rows;
};

/** Whether a cell is a value of the field by the standard's rules for its type and constraints. */
function holds(
  { type, constraints: limits = {}, trueValues = [], falseValues = [] }: z.infer<typeof field>,
  cell: string,
): boolean {
  if (cell === '') return limits.required !== true;
  const number = Number(cell);
  const lexical =
    type === 'integer'
      ? /^[+-]?\d+$/.test(cell)
      : type === 'number'
        ? /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell)
        : type === 'date'
          ? /^\d{4}-\d{2}-\d{2}$/.test(cell)
          : type === 'boolean'
            ? [...trueValues, ...falseValues].includes(cell)
            : true;
  return (
    lexical &&
    (limits.enum === undefined || limits.enum.includes(cell)) &&
    (limits.minimum === undefined || number >= limits.minimum) &&
    (limits.maximum === undefined || number <= limits.maximum) &&
    (limits.maxLength === undefined || cell.length <= limits.maxLength)
  );
}

describe('a written folder, held against the Data Package standard', () => {
  test('has a valid descriptor, and every cell, primary key and foreign key of its files agrees with it', async () => {
    const dir = await folderOf();
    const read = await readProgramFolder(dir);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    await writeProgramFolder(
      { ...read.value, settings: { name: 'Invented Valley Co-operative', invented: true, pinnedOn: '2025-07-16' } },
      dir,
    );
    const descriptor = dataPackageStandard.parse(JSON.parse(await readFile(join(dir, 'datapackage.json'), 'utf8')));
    expect(descriptor).toMatchObject({
      title: 'Invented Valley Co-operative',
      duskwatch: { invented: true, pinnedOn: '2025-07-16' },
    });

    const values = new Map<string, Map<string, string[]>>();
    let cellsSeen = 0;
    for (const resource of descriptor.resources) {
      const [header = [], ...rows] = rowsOf(await readFile(join(dir, resource.path), 'utf8'));
      expect(header).toEqual(resource.schema.fields.map(({ name }) => name));
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) {
        for (const [index, described] of resource.schema.fields.entries()) {
          expect([resource.name, described.name, row[index], holds(described, row[index]!)]).toEqual([
            resource.name,
            described.name,
            row[index],
            true,
          ]);
          cellsSeen += 1;
        }
      }
      values.set(resource.name, new Map(header.map((name, index) => [name, rows.map((row) => row[index]!)])));
      const { primaryKey } = resource.schema;
      if (primaryKey) {
        const keys = rows.map((row) => primaryKey.map((name) => row[header.indexOf(name)]).join('\u0000'));
        expect(new Set(keys).size).toBe(rows.length);
      }
    }
    for (const {
      name,
      schema: { foreignKeys = [] },
    } of descriptor.resources) {
      for (const { fields, reference } of foreignKeys) {
        const allowed = new Set(values.get(reference.resource)!.get(reference.fields[0]!));
        for (const value of values.get(name)!.get(fields[0]!)!) expect(allowed).toContain(value);
      }
    }
    expect(cellsSeen).toBeGreaterThan(100);
  });
});
