import type { KnownWords } from '../records/locate.ts';
import { catalogue } from './catalogue.ts';
import { canonicalStage } from './crops/stages.ts';
import { cropById } from './look-up.ts';

/** The insects, crops and stages of the catalogue. */
export const catalogueWords: KnownWords = {
  insects: catalogue.insects.map((insect) => insect.id),
  stagesOf: (crop) => cropById(crop)?.stages.map((stage) => stage.id) ?? null,
  stage: canonicalStage,
};
