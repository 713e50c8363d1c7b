/** All that a scouting sheet says, in one language and ready to be laid on paper. */
import {
  canonicalStage,
  cropById,
  english,
  type Language,
  type Sampled,
  type ScoutingSheet,
  scoutingWording,
  spanish,
} from '@duskwatch/core';

export interface SheetRow {
  readonly lap: string | null;
  readonly place: string;
  readonly boxes: number;
  readonly samples: string;
  /** `0–2`; empty where the plan does not stop. */
  readonly below: string;
  /** `6+`. */
  readonly above: string;
}

export interface SheetText {
  readonly title: string;
  readonly program: string;
  readonly heading: string;
  readonly subject: string;
  /** Scientific name of the insect. */
  readonly species: string;
  readonly facts: readonly string[];
  readonly blanks: readonly string[];
  readonly look: { readonly title: string; readonly lines: readonly string[] };
  readonly walk: { readonly title: string; readonly steps: readonly string[] };
  readonly cautions: { readonly title: string; readonly urgent: readonly string[]; readonly lines: readonly string[] };
  readonly when: { readonly title: string; readonly lines: readonly string[] };
  readonly columns: readonly string[];
  readonly rows: readonly SheetRow[];
  readonly result: { readonly title: string; readonly choices: readonly string[] };
  readonly foot: readonly string[];
  readonly page: string;
}

export function sheetText(sheet: ScoutingSheet | null, language: Language, page: number, pages: number): SheetText {
  const w = scoutingWording(language);
  const common = { title: w.sheet.title, page: w.sheet.page(page, pages), walk: { title: w.sheet.walk, steps: [] as string[] } };
  if (sheet === null) return { ...EMPTY, ...common, heading: w.sheet.none };
  const { program, field, insect, look, walk, plan, counting, lines, curves } = sheet;
  const wording = (language === 'es' ? spanish : english)({ temperature: 'C' });
  const sampled: Sampled = plan ?? { unit: counting!.unit, sign: 'infested' };
  const partner = plan?.combinedWith ?? null;
  return {
    ...common,
    program: `${program.name}${program.invented ? ` – ${w.sheet.invented}` : ''}`,
    heading: field.name,
    subject: insect.commonName[language],
    species: insect.scientificName,
    facts: [
      [field.farm, cropById(field.crop)?.name[language] ?? field.crop, stageText(sheet, language)].filter(Boolean).join(' · '),
      plan
        ? `${w.sheet.figure}: ${w.figure(plan)}. ${plan.source} (${wording.standing[plan.standing]}).`
        : w.noFigure(insect.commonName[language]),
    ],
    blanks: [w.sheet.date, w.sheet.scout, w.sheet.time, w.sheet.weather, w.sheet.stage],
    look: {
      title: w.sheet.lookFor,
      lines: [
        look?.text[language] ?? w.sheet.noLook,
        w.counts(sampled),
        ...(partner ? [w.together(wording.insect(partner.insect), partner.share, sampled)] : []),
      ],
    },
    walk: { title: w.sheet.walk, steps: w.path(walk, sampled.unit) },
    cautions: {
      title: w.sheet.cautions,
      urgent: field.keepOut.map(({ until, product, hours }) => w.keepOut(wording.day(until), product, hours)),
      lines: w.cautions,
    },
    when: { title: w.sheet.when, lines: [plan ? w.sheet.howTo(sampled, walk) : w.sheet.countAll(walk, sampled.unit)] },
    columns: [
      w.sheet.place,
      w.sheet.tally(sampled),
      w.sheet.examined(sampled.unit),
      w.sheet.soFar(sampled),
      ...(plan ? [w.sheet.below, w.sheet.above] : []),
    ],
    rows: lines.map(({ lap, place, units, samples, below, above }) => ({
      lap: place === 1 ? w.sheet.lap(lap) : null,
      place: String(place),
      boxes: units,
      samples: String(samples),
      below: below === null ? '' : below === 0 ? '0' : `0–${below}`,
      above: above === null ? '' : `${above}+`,
    })),
    result: { title: w.sheet.result, choices: plan ? w.sheet.results : [] },
    foot: [
      ...(plan && curves ? w.risks(plan, curves.atM0, curves.atM1) : []),
      ...(plan ? [w.clumping(plan)] : []),
      ...(plan ? [w.basis(plan)] : []),
      w.sheet.enter,
    ],
  };
}

function stageText({ field }: ScoutingSheet, language: Language): string {
  if (!field.stage) return '';
  const id = canonicalStage(field.crop, field.stage.stage);
  return cropById(field.crop)?.stages.find((stage) => stage.id === id)?.name[language] ?? field.stage.stage;
}

const EMPTY = {
  program: '',
  subject: '',
  species: '',
  facts: [],
  blanks: [],
  look: { title: '', lines: [] },
  cautions: { title: '', urgent: [], lines: [] },
  when: { title: '', lines: [] },
  columns: [],
  rows: [],
  result: { title: '', choices: [] },
  foot: [],
} satisfies Partial<SheetText>;
