import type { Practice } from './types.ts';

export const practices: readonly Practice[] = [];
