/** The week's bulletin as people read it, block by block, and as plain text. */
import type { BulletinInsect, BulletinView } from '../answers/bulletin-schema.ts';
import { citation } from '../catalogue/index.ts';
import type { Language } from '../people/person.ts';
import { bulletinEnglish } from './bulletin.en.ts';
import { bulletinSpanish } from './bulletin.es.ts';
import type { BulletinBlock, BulletinWording } from './bulletin-types.ts';
import { english } from './en.ts';
import { spanish } from './es.ts';
import type { DayOrder, Wording } from './types.ts';

export type { BulletinBlock } from './bulletin-types.ts';

export interface Bulletin {
  readonly language: Language;
  readonly title: string;
  readonly week: string;
  /** Stands on every copy of a demo; null elsewhere. */
  readonly invented: string | null;
  readonly blocks: readonly BulletinBlock[];
}

const said: Readonly<Record<Language, BulletinWording>> = { en: bulletinEnglish, es: bulletinSpanish };

/** Both languages say the same from the same figures. */
export function bulletinIn(language: Language, view: BulletinView, dayOrder?: DayOrder): Bulletin {
  const w = said[language];
  const wording = language === 'es' ? spanish({ temperature: 'C' }) : english({ temperature: 'C', dayOrder });
  const { program, from, on, next } = view;
  const first = view.insects.map((insect) => w.first(insect, wording)).filter((line) => line !== null);
  return {
    language,
    title: w.title(program.name),
    week: w.week(wording.day(from), wording.day(on)),
    invented: program.invented ? w.invented : null,
    blocks: [
      { id: 'summary', title: w.summary, lines: first.length > 0 ? first : [w.quiet], fixed: false },
      ...view.insects.map((insect) => insectBlock(insect, w, wording)),
      { id: 'cautions', ...w.cautions, fixed: true },
      { id: 'sure', title: w.sure.title, lines: w.sure.lines(view), fixed: true },
      { id: 'sources', title: w.sources.title, lines: sourcesOf(view, w), fixed: true },
      { id: 'next', title: w.next.title, lines: [w.next.line(wording.day(next))], fixed: false },
    ],
  };
}

function insectBlock(insect: BulletinInsect, w: BulletinWording, wording: Wording): BulletinBlock {
  const name = wording.insect(insect.insect.id);
  return {
    id: `insect:${insect.insect.id}`,
    title: `${name.charAt(0).toUpperCase()}${name.slice(1)}`,
    lines: [
      w.caught(insect, wording),
      w.earlier(insect, wording),
      ...insect.crops.map((crop) => w.crop(crop, wording)),
      ...insect.expected.map((event) => w.expected(event, wording)),
    ].filter((line) => line !== null),
    fixed: false,
  };
}

function sourcesOf({ insects }: BulletinView, { sources }: BulletinWording): string[] {
  const cited = insects.flatMap((insect) => [...insect.sources, ...insect.expected.map(({ source }) => source)]);
  const named = [...new Set(cited.flatMap((source) => citation(source) ?? []))].sort();
  return named.length > 0 ? named : [sources.none];
}

/**
 * For an e-mail or a message: no line leans on a picture or on type.
 * @param own blocks put in other words, by id
 */
export function bulletinText({ title, week, invented, blocks }: Bulletin, own: Readonly<Record<string, string>> = {}): string {
  const parts = blocks.map(({ id, title: head, lines }) => `${head.toUpperCase()}\n${own[id] ?? lines.join('\n')}`);
  return `${[...(invented ? [invented] : []), `${title}\n${week}`, ...parts].join('\n\n')}\n`;
}
