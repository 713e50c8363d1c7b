/** What a bulletin says, in one language: made of figures, and nothing in it surer than they are. */
import type { BulletinInsect, BulletinView, CropWeek, ExpectedEvent } from '../answers/bulletin-schema.ts';
import type { Wording } from './types.ts';

/** A part of the bulletin that a person may put in other words. */
export interface BulletinBlock {
  /** `summary`, `insect:helicoverpa-zea`, `next`, … */
  readonly id: string;
  readonly title: string;
  /** A sentence or a line each. */
  readonly lines: readonly string[];
  /** Always sent: it can be added to, and not left out. */
  readonly fixed: boolean;
}

export interface BulletinWording {
  readonly title: (program: string) => string;
  readonly week: (from: string, on: string) => string;
  readonly invented: string;
  readonly summary: string;
  readonly quiet: string;
  /** One sentence for the summary; null where nothing is to be said of it first. */
  readonly first: (insect: BulletinInsect, wording: Wording) => string | null;
  readonly caught: (insect: BulletinInsect, wording: Wording) => string;
  readonly earlier: (insect: BulletinInsect, wording: Wording) => string | null;
  readonly crop: (crop: CropWeek, wording: Wording) => string;
  readonly expected: (event: ExpectedEvent, wording: Wording) => string;
  readonly cautions: { readonly title: string; readonly lines: readonly string[] };
  readonly sure: { readonly title: string; readonly lines: (view: BulletinView) => readonly string[] };
  readonly sources: { readonly title: string; readonly none: string };
  readonly next: { readonly title: string; readonly line: (day: string) => string };
}
