/** Sources cited in more than one place, so that each is spelled once. */
import type { LocalText, Sourced } from './types.ts';

const published = (source: string): Sourced => ({ source, standing: 'published' });

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

export const USDA_1976 = published('USDA ARS-S-127 (1976), as tabulated by UC ANR');
export const COOP_1993 = published('Coop, Croft & Drapek 1993, J. Econ. Entomol. 86:906–916');
export const APPLE_UW = published('Apple, Univ. Wisconsin, as published by UW AgWeather');
export const ILLINOIS_2007 = published('Illinois IPM Bulletin 2007 no. 9');
export const CUTWORM_EXTENSION = published('UW-Madison IPCM 2023; Univ. Illinois 2004; Univ. Missouri cutting table');
export const STORY_1984 = published('Story et al. 1984, J. Econ. Entomol. 77:491–494, as tabulated by UC ANR');
export const LUCKMANN_1976 = published('Luckmann et al. 1976, J. Econ. Entomol. 69:386–388, as tabulated by UC ANR');
export const SDSU_2021 = published('South Dakota State Univ. Extension 2021');
export const MSU_CODLING_MOTH = published('Michigan State Univ. Extension, codling moth degree-day table');

export const UCONN_2012 = published('UConn Sweet Corn IPM Action Thresholds, reviewed 2012');
export const MAINE_2017 = published('Univ. Maine Sweet Corn IPM newsletters 2017');
export const MAINE_POTATO = published('Univ. Maine Extension, potatoes');
export const PURDUE_HOTLINE = published('Purdue Vegetable Crops Hotline');
export const NORTHEAST_UPDATES = published('Northeast extension sweet corn updates');
export const SCOUTING_GUIDE = published('extension scouting guide, sweet corn');
export const DELAWARE_KUHAR = published('Univ. Delaware Weekly Crop Update, citing Kuhar et al. 2006');
export const UNH_EXTENSION = published('UNH Extension');
export const UNH_TRAP_SHEET = published('UNH Extension fact sheet');
export const JACKSON_2005 = published('Jackson, Canhilal & Carner 2005, J. Agric. Urban Entomol. 22:27–39');
export const CALIFORNIA_AGRICULTURE_1990 = published('California Agriculture 44(5):33–35, 1990');
