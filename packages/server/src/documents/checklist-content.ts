import {
  type Act,
  designFacts,
  english,
  fromMetres,
  hangingFacts,
  insectById,
  type Language,
  type LengthUnit,
  practicesFor,
  type Sourced,
  spanish,
  type TrapDesign,
} from '@duskwatch/core';
import { checklistWords } from './checklist-words.ts';

export interface ChecklistRequest {
  readonly design: TrapDesign;
  /** Insects trapped with it, for a line of gloves each. */
  readonly insects: readonly string[];
  readonly language: Language;
  readonly length: LengthUnit;
  readonly paper: 'A4' | 'Letter';
  readonly programName: string;
  readonly invented: boolean;
}

interface ChecklistItem {
  readonly text: string;
  /** Numbers in the list of sources. */
  readonly source: number | null;
}

export interface Checklist {
  readonly title: string;
  readonly program: string;
  readonly blanks: readonly string[];
  readonly sections: readonly { readonly title: string; readonly isCaution: boolean; readonly items: readonly ChecklistItem[] }[];
  readonly sourcesTitle: string;
  readonly sources: readonly string[];
  readonly foot: string;
}

/** Cautions first: they are read before anybody sets out. */
export function checklistOf({ design, insects, language, length, programName, invented }: ChecklistRequest): Checklist {
  const w = checklistWords[language];
  const wording = (language === 'es' ? spanish : english)({ temperature: 'C' });
  const sources: string[] = [];
  const from = (fact: Sourced): number => {
    const line = fact.standing === 'published' ? fact.source : `${wording.standing[fact.standing]}`;
    const index = sources.indexOf(line);
    return index >= 0 ? index + 1 : sources.push(line);
  };
  const items = (acts: readonly Act[], weight: 'fact' | 'caution'): ChecklistItem[] =>
    acts
      .flatMap((act) => practicesFor(act))
      .filter((each) => each.weight === weight && (each.designs === null || each.designs.includes(design)))
      .filter((each) => each.insects === null || each.insects.some((insect) => insects.includes(insect)))
      .map((each) => ({ text: each.text[language], source: from(each) }));
  const facts = designFacts(design);
  const hanging = hangingFacts(design);
  const practice = (text: string): ChecklistItem => ({ text, source: from(hanging) });
  const place: ChecklistItem[] = [
    ...(facts ? [{ text: facts.siting[language], source: from(facts) }] : []),
    ...items(['siting'], 'fact'),
    facts?.heightM
      ? { text: w.height(heightText(facts.heightM, length, language)), source: from(facts) }
      : { text: w.heightUnknown, source: null },
  ];
  const gloves = insects.map((insect) => w.gloves(insectById(insect)?.commonName[language] ?? insect.replaceAll('-', ' ')));
  return {
    title: w.title(facts?.name[language] ?? wording.design[design]),
    program: `${programName}${invented ? ` (${w.invented})` : ''}`,
    blanks: w.blanks,
    sections: [
      {
        title: w.sections.before,
        isCaution: true,
        items: items(['siting', 'setting-posts', 'handling-lures', 'walking-fields'], 'caution'),
      },
      { title: w.sections.materials, isCaution: false, items: hanging.materials.map((each) => practice(each[language])) },
      { title: w.sections.place, isCaution: false, items: place },
      { title: w.sections.hang, isCaution: false, items: hanging.steps.map((each) => practice(each[language])) },
      {
        title: w.sections.gloves,
        isCaution: false,
        items: [...items(['handling-lures'], 'fact'), ...(gloves.length > 0 ? gloves : [w.noInsects]).map(practice)],
      },
    ],
    sourcesTitle: w.sections.sources,
    sources,
    foot: w.label,
  };
}

function heightText(metres: number, length: LengthUnit, language: Language): string {
  const figure = fromMetres(metres, length).toLocaleString(language, { maximumFractionDigits: length === 'm' ? 1 : 0 });
  return `${figure} ${length === 'ft' && language === 'es' ? 'pies' : length}`;
}
