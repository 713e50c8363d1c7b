/** Reading sheets without a file system: what a browser's worker takes. */
export { type AnyMatch, answerMatch } from './answers.ts';
export { applyAnyMatch } from './apply-match.ts';
export { picturesOf, type SheetPicture } from './picture.ts';
export { proposeMatch } from './propose-match.ts';
export { rememberedAnswer } from './remembered.ts';
