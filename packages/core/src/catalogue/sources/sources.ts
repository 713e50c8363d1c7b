/** Works cited by more than one fact, so that each is spelled once; one cited by a single insect may stand in its folder. */
import type { LocalText, Sourced, Work } from '../types.ts';

/** `source` is how the work is cited beside a figure; the works say in full what it is and where one can read it. */
export const published = (source: string, ...works: readonly [Work, ...Work[]]): Sourced => ({
  source,
  standing: 'published',
  works,
});

export const COMMON_PRACTICE: Sourced = { source: 'common practice, no source', standing: 'practice' };
export const FROM_MEMORY: Sourced = { source: 'from memory', standing: 'memory' };
export const OWN_FIGURE = { source: 'figure chosen by Duskwatch, no source', standing: 'chosen' } as const satisfies Sourced;

/** Sources that cite nothing and only say, in English, what the reader is told in their own language. */
const REMARKS: ReadonlySet<string> = new Set([COMMON_PRACTICE, FROM_MEMORY, OWN_FIGURE].map(({ source }) => source));

/** The work that a source cites, in its own language; null when it cites none. */
export const citation = (source: string | null): string | null =>
  source === null || source === '' || REMARKS.has(source) ? null : source;

/** The same fact with a note beside it. */
export const noted = (sourced: Sourced, note: LocalText): Sourced => ({ ...sourced, note });

/**
 * Read in guides and newsletters of extension services whose author and year are not at hand. That is no source, so
 * such a fact stands as common practice, and its note says where it was read.
 */
export const unnamed = (note: LocalText): Sourced => noted(COMMON_PRACTICE, note);

const UC_ANR_MODELS = { author: 'UC ANR', year: null, title: null, where: 'UC ANR Statewide IPM Program, phenology models' };

export const USDA_1976 = published(
  'USDA ARS-S-127 (1976), as tabulated by UC ANR',
  { author: 'USDA Agricultural Research Service', year: 1976, title: null, where: 'USDA report ARS-S-127' },
  UC_ANR_MODELS,
);
export const COOP_1993 = published('Coop, Croft & Drapek 1993, J. Econ. Entomol. 86:906–916', {
  author: 'Coop, Croft & Drapek',
  year: 1993,
  title: null,
  where: 'J. Econ. Entomol. 86:906–916',
});
export const APPLE_UW = published('Apple, Univ. Wisconsin, as published by UW AgWeather', {
  author: 'Apple, Univ. Wisconsin',
  year: null,
  title: null,
  where: 'UW AgWeather, European corn borer degree-days',
});
export const ILLINOIS_2007 = published('Illinois IPM Bulletin 2007 no. 9', {
  author: 'Univ. Illinois Extension',
  year: 2007,
  title: 'Illinois IPM Bulletin',
  where: 'Illinois IPM Bulletin 2007, no. 9',
});
export const CUTWORM_EXTENSION = published(
  'UW-Madison IPCM 2023; Univ. Illinois 2004; Univ. Missouri cutting table',
  { author: 'UW-Madison IPCM', year: 2023, title: null, where: 'UW-Madison Integrated Pest and Crop Management' },
  { author: 'Univ. Illinois', year: 2004, title: null, where: 'Univ. Illinois Extension' },
  { author: 'Univ. Missouri', year: null, title: 'black cutworm cutting table', where: 'Univ. Missouri Extension' },
);
export const STORY_1984 = published(
  'Story et al. 1984, J. Econ. Entomol. 77:491–494, as tabulated by UC ANR',
  { author: 'Story et al.', year: 1984, title: null, where: 'J. Econ. Entomol. 77:491–494' },
  UC_ANR_MODELS,
);
export const LUCKMANN_1976 = published(
  'Luckmann et al. 1976, J. Econ. Entomol. 69:386–388, as tabulated by UC ANR',
  { author: 'Luckmann et al.', year: 1976, title: null, where: 'J. Econ. Entomol. 69:386–388' },
  UC_ANR_MODELS,
);
export const SDSU_2021 = published('South Dakota State Univ. Extension 2021', {
  author: 'South Dakota State Univ. Extension',
  year: 2021,
  title: null,
  where: 'SDSU Extension, squash vine borer',
});
export const MSU_CODLING_MOTH = published('Michigan State Univ. Extension, codling moth degree-day table', {
  author: 'Michigan State Univ. Extension',
  year: null,
  title: 'codling moth degree-day table',
  where: 'MSU Extension',
});

export const UCONN_2012 = published('UConn Sweet Corn IPM Action Thresholds, reviewed 2012', {
  author: 'Univ. Connecticut IPM',
  year: 2012,
  title: 'Sweet Corn IPM Action Thresholds',
  where: 'UConn Integrated Pest Management, sweet corn',
});
export const NYSIPM_CATCHES = published('New York State IPM, “Sweet corn pheromone trap catches: what do they mean?”', {
  author: 'New York State IPM',
  year: null,
  title: 'Sweet corn pheromone trap catches: what do they mean?',
  where: 'New York State Integrated Pest Management, sweet corn',
});
export const MAINE_2017 = published('Univ. Maine Sweet Corn IPM newsletters 2017', {
  author: 'Univ. Maine Cooperative Extension',
  year: 2017,
  title: 'Sweet Corn IPM newsletters',
  where: 'Univ. Maine Cooperative Extension, sweet corn newsletters of 2017',
});
export const MAINE_POTATO = published('Univ. Maine Extension, potatoes', {
  author: 'Univ. Maine Cooperative Extension',
  year: null,
  title: null,
  where: 'Univ. Maine Cooperative Extension, potato pest management',
});
export const PURDUE_HOTLINE = published('Purdue Vegetable Crops Hotline', {
  author: 'Purdue Univ. Extension',
  year: null,
  title: 'Vegetable Crops Hotline',
  where: 'Purdue Vegetable Crops Hotline (newsletter)',
});
export const DELAWARE_UPDATE = published('Univ. Delaware Weekly Crop Update', {
  author: 'Univ. Delaware Cooperative Extension',
  year: null,
  title: 'Weekly Crop Update',
  where: 'Univ. Delaware Weekly Crop Update (newsletter)',
});
export const DELAWARE_KUHAR = published(
  'Univ. Delaware Weekly Crop Update, citing Kuhar et al. 2006',
  {
    author: 'Univ. Delaware Cooperative Extension',
    year: null,
    title: 'Weekly Crop Update',
    where: 'Univ. Delaware Weekly Crop Update (newsletter)',
  },
  { author: 'Kuhar et al.', year: 2006, title: null, where: 'cited in the Weekly Crop Update' },
);
export const UNH_EXTENSION = published('UNH Extension', {
  author: 'Univ. New Hampshire Cooperative Extension',
  year: null,
  title: null,
  where: 'UNH Extension, squash vine borer',
});
export const UNH_TRAP_SHEET = published('UNH Extension fact sheet', {
  author: 'Univ. New Hampshire Cooperative Extension',
  year: null,
  title: null,
  where: 'UNH Extension, fact sheet on pheromone traps in sweet corn',
});
export const JACKSON_2005 = published('Jackson, Canhilal & Carner 2005, J. Agric. Urban Entomol. 22:27–39', {
  author: 'Jackson, Canhilal & Carner',
  year: 2005,
  title: null,
  where: 'J. Agric. Urban Entomol. 22:27–39',
});
export const CALIFORNIA_AGRICULTURE_1990 = published('California Agriculture 44(5):33–35, 1990', {
  author: 'California Agriculture',
  year: 1990,
  title: null,
  where: 'California Agriculture 44(5):33–35',
});
