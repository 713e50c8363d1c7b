import type { Practice } from '../types.ts';
import { decidingPractices } from './deciding.ts';
import { lureAndMothPractices } from './lures-and-moths.ts';
import { trapPractices } from './traps.ts';

export const practices: readonly Practice[] = [...trapPractices, ...lureAndMothPractices, ...decidingPractices];
