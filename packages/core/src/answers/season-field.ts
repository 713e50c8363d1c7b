import type { Prepared } from '../advice/prepare.ts';
import type { SeasonField } from './season-schema.ts';

export function fieldOf(prepared: Prepared, id: string): SeasonField {
  const field = prepared.fields.get(id);
  return { fieldId: id, name: field?.name ?? id, farm: field?.farm ?? '', crop: field?.crop ?? '' };
}
