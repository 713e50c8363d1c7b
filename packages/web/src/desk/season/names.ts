/** Areas in words. */
import type { SeasonLineView } from '@duskwatch/core';
import { cropName } from '../../text/names.ts';

export const areaName = ({ fields }: SeasonLineView): string => fields.map(({ name }) => name).join(' + ');
export const areaCrops = ({ fields }: SeasonLineView): string =>
  [...new Set(fields.map(({ crop }) => cropName(crop)))].join(', ');
