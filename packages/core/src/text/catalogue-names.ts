import { cropById, insectById } from '../catalogue/index.ts';
import type { Language } from '../people/person.ts';
import { namesAsWritten, type TradeNames } from './trade-names.ts';

/** By the catalogue; a word that is not in it as it is written. */
export const namesByCatalogue = (language: Language): TradeNames => ({
  insect: (id) => insectById(id)?.commonName[language] ?? namesAsWritten.insect(id),
  crop: (id) => cropById(id)?.name[language] ?? namesAsWritten.crop(id),
  stage: (crop, id) => cropById(crop)?.stages.find((stage) => stage.id === id)?.name[language] ?? namesAsWritten.stage(crop, id),
});
