import type { Person } from '@duskwatch/core';
import { rememberLanguage } from '../text/language.ts';

/** Begins anew as somebody: no answer, draft or language of whoever was here before stays on the page. */
export function enter(person: Person, address?: string): void {
  rememberLanguage(person.language);
  if (address === undefined) location.reload();
  else location.assign(address);
}
