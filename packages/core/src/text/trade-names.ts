import { scientificNameOf } from '../records/own-insect.ts';

/** What insects, crops and stages are called in a sentence about something that is wrong. */
export interface TradeNames {
  readonly insect: (id: string) => string;
  readonly crop: (id: string) => string;
  readonly stage: (crop: string, id: string) => string;
}

const spaced = (slug: string) => slug.replaceAll('-', ' ');

/** As they are written: for a phone, which goes without the catalogue. */
export const namesAsWritten: TradeNames = { insect: scientificNameOf, crop: spaced, stage: (_, id) => spaced(id) };
