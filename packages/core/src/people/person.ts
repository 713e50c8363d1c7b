/** Who uses a program, and as what. */
export const ROLES = ['coordinator', 'scout', 'grower', 'reader'] as const;
/**
 * - `coordinator`: runs the program and its people.
 * - `scout`: checks traps; sees the whole program.
 * - `grower`: sees what concerns the own farms.
 * - `reader`: sees how the insects fly, and no place.
 */
export type Role = (typeof ROLES)[number];

export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  /** `farm` of the fields a grower sees; empty in every other role. */
  readonly farms: readonly string[];
  readonly language: Language;
  /** May no longer sign in. What they wrote stays theirs. */
  readonly disabled: boolean;
}
