/** Untidy sheets, invented, as people keep them: what each must become is written beside them in `expected.json`. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { SheetReading } from '@duskwatch/core';

export const folder = fileURLToPath(new URL('../../fixtures/', import.meta.url));
export const expected = JSON.parse(readFileSync(`${folder}expected.json`, 'utf8')) as Record<string, SheetReading>;
export const files = readdirSync(folder).filter((file) => file !== 'expected.json');

/** As somebody answers who knows the program; else what is offered is taken. */
export const ANSWERS: Readonly<Record<string, string>> = {
  insect: 'helicoverpa-zea',
  design: 'mesh-cone',
  crop: 'sweet-corn',
  farm: 'Invented Farm',
  field: 'each-trap',
  condition: 'fit',
  hungOn: '2020-04-20',
  year: '2025',
};
