/** What a person may see of what was said, by the same rule that cuts their program. */
import { type Person, type Program, scopeProgram } from '@duskwatch/core';
import type { Conflict, StoredRevision } from '@duskwatch/store';

export interface Sight {
  /** As the person may see it; null: not at all. */
  revision<R extends StoredRevision>(said: R): R | null;
  conflict(conflict: Conflict): Conflict | null;
}

/**
 * `whole` is the program as it now is: a grower sees the history of a record while its field, or a field that its
 * trap informs, is their own. Removals of traps and fields are not shown to growers, since what is gone has no farm.
 */
export function sightOf(person: Person, whole: Program): Sight {
  if (person.disabled || person.role === 'reader') return NOTHING;
  if (person.role === 'coordinator') return EVERYTHING;
  if (person.role === 'scout') return within((said) => (said.kind === 'prices' || said.kind === 'sources' ? null : said));
  const part = scopeProgram(whole, person);
  const fields = new Set(part.fields.map((field) => field.fieldId));
  const traps = new Set(part.traps.map((trap) => trap.trapId));
  const sources = new Set(part.weather.map((record) => record.sourceId));
  const farms = new Set(person.farms);
  const ownerOf = (key: string) => key.split('|', 1)[0]!;

  function revision<R extends StoredRevision>(said: R): R | null {
    const { kind, key, value } = said;
    switch (kind) {
      case 'settings':
      case 'rules':
        return said;
      // Where it is fetched may hold a key: the answers made of it leave that out.
      case 'sources':
      case 'seasons':
      case 'plans':
      case 'prices':
      case 'stock':
      case 'answers':
        return null;
      case 'weather':
      case 'normals':
        return sources.has(ownerOf(key)) ? said : null;
      case 'stages':
      case 'samples':
      case 'treatments':
      case 'decisions':
        return fields.has(ownerOf(key)) ? said : null;
      case 'checks':
      case 'lures':
      case 'skips':
        return traps.has(ownerOf(key)) ? said : null;
      case 'fields':
        return value !== null && 'farm' in value && farms.has(value.farm) ? said : null;
      case 'traps': {
        if (value === null || !('informs' in value)) return null;
        const informs = value.informs.filter((field) => fields.has(field));
        return informs.length > 0 ? { ...said, value: { ...value, informs } } : null;
      }
    }
  }

  return within(revision);
}

/** A conflict is seen where all its sides are. */
function within(revision: Sight['revision']): Sight {
  return {
    revision,
    conflict(all) {
      const held = revision(all.held);
      const rivals = all.rivals.map(revision);
      return held !== null && rivals.every((rival) => rival !== null) ? { ...all, held, rivals } : null;
    },
  };
}

const EVERYTHING: Sight = { revision: (said) => said, conflict: (conflict) => conflict };
const NOTHING: Sight = { revision: () => null, conflict: () => null };
