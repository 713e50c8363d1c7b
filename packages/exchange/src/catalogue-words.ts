import { canonicalCrop, canonicalStage, catalogue, cropById, type KnownWords } from '@duskwatch/core';

/** The insects, crops and stages of the catalogue. */
export const catalogueWords: KnownWords = {
  insects: catalogue.insects.map((insect) => insect.id),
  stagesOf: (crop) => cropById(canonicalCrop(crop))?.stages.map((stage) => stage.id) ?? null,
  stage: (crop, written) => canonicalStage(canonicalCrop(crop), written),
};
