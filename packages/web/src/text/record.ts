import type { RecordKind } from '@duskwatch/core';
import { inLanguage } from './language.ts';
import { recordEn } from './record.en.ts';
import { recordEs } from './record.es.ts';
import type { Label } from './record-labels.ts';

/** The words of the forms that write records in the language in use. */
export const recordWords = inLanguage({ en: recordEn, es: recordEs });

/** What a property of a record is called, and what to know while filling it in. */
export function labelOf(kind: RecordKind | 'settings', property: string): Label {
  const labels: Readonly<Record<string, Label>> = recordWords.labels[kind];
  return labels[property] ?? { label: property };
}
