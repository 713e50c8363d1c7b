/** The identifier that a new record gets from its names, before anybody writes one. */
import { identifierOf, type RecordKind } from '@duskwatch/core';
import type { Around, FormTexts } from './form-texts.ts';

/** First letters of an insect's scientific name: `hz` of `helicoverpa-zea`. */
const initials = (insect: string): string =>
  insect
    .split('-')
    .map((word) => word.charAt(0))
    .join('');

export function identifierFor(kind: RecordKind, draft: FormTexts, { fields = [], traps = [] }: Around): FormTexts {
  const { farm = '', name = '', station = '', insect = '' } = draft;
  switch (kind) {
    case 'fields':
      // Where a field is called after its farm, that says enough.
      return {
        fieldId: identifierOf(startsWith(name, farm) ? [name] : [farm, name], (id) =>
          fields.some(({ fieldId }) => fieldId === id),
        ),
      };
    case 'traps':
      return {
        trapId: insect === '' ? '' : identifierOf([station, initials(insect)], (id) => traps.some(({ trapId }) => trapId === id)),
      };
    case 'sources':
      return { sourceId: identifierOf([name], () => false) };
    default:
      return {};
  }
}

const startsWith = (name: string, farm: string): boolean => name.toLowerCase().startsWith(farm.trim().toLowerCase());
