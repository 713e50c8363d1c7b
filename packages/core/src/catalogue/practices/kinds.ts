import { COMMON_PRACTICE } from '../sources/sources.ts';

/** Most practices hold for any insect and design, and have no source. */
export const ANY = { insects: null, designs: null, figure: null } as const;
export const practice = { ...COMMON_PRACTICE, ...ANY, weight: 'fact' } as const;
export const caution = { ...COMMON_PRACTICE, ...ANY, weight: 'caution' } as const;
