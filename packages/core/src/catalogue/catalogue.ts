import { crops } from './crops.ts';
import { insects } from './insects.ts';
import { models } from './models/models.ts';
import { practices } from './practices/practices.ts';
import { rules } from './rules/rules.ts';
import { searchPlaces } from './search-places.ts';
import { designRatios, designs } from './traps.ts';
import type { Catalogue } from './types.ts';

/** Every fact of the trade that ships with Duskwatch. A program's own rules go before it. */
export const catalogue: Catalogue = { insects, crops, models, rules, designs, designRatios, practices, searchPlaces };
