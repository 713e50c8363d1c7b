import type { ActionRule } from '../types.ts';
import { otherCropRules } from './other-crops.ts';
import { sweetCornRules } from './sweet-corn.ts';

export const rules: readonly ActionRule[] = [...sweetCornRules, ...otherCropRules];
