/** Reading sheets without a file system: what a browser's worker takes. */
export { isProgramZip, readProgramZip } from '../folder/read-zip.ts';
export { readingOfProgram } from '../folder/reading-of-program.ts';
export { type AnyMatch, answerMatch } from './answers.ts';
export { applyAnyMatch } from './apply-match.ts';
export { type Correction, correct } from './correct.ts';
export { picturesOf, type SheetPicture } from './picture.ts';
export { proposeMatch, type SheetLookedAt } from './propose-match.ts';
export { rememberedAnswer } from './remembered.ts';
