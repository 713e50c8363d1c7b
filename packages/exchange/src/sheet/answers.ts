/** Answers to the questions of a sheet, put into its match. */
import {
  CellFault,
  canonicalCrop,
  isoDay,
  type Problem,
  type Result,
  type SheetMatch,
  type SheetQuestion,
  sheetProposalSchema,
  type WeatherMatch,
} from '@duskwatch/core';
import { designNamed, insectNamed } from './resolve-words.ts';

export type AnyMatch = SheetMatch | WeatherMatch;

/** Whether the match holds an answer to the question. */
export function isAnswered(match: AnyMatch, question: SheetQuestion): boolean {
  if (match.kind === 'counts') return isAnsweredOfCounts(match, question);
  const { ask } = question;
  if (ask === 'source') return match.sourceId !== null;
  if (ask === 'clock') return match.addHours !== null;
  return ask !== 'temperatureUnit' && ask !== 'precipitationUnit' && ask !== 'dateOrder' ? true : match[ask] !== null;
}

function isAnsweredOfCounts(match: SheetMatch, { ask, about }: SheetQuestion): boolean {
  if (ask === 'word') return (match.words[about!] ?? null) !== null;
  if (ask === 'insectName') return (match.insects[about!] ?? null) !== null;
  if (ask === 'designName') return (match.designs[about!] ?? null) !== null;
  if (ask === 'dayMeans') return match.dayShift !== null;
  if (ask === 'dateOrder' || ask === 'year' || ask === 'figures' || ask === 'hungOn') return match[ask] !== null;
  return ask in match.constants ? match.constants[ask as keyof SheetMatch['constants']] !== null : true;
}

/** The match with the answers in it, by the ids of their questions. Every answer that does not fit is named. */
export function answerMatch<M extends AnyMatch>(
  match: M,
  questions: readonly SheetQuestion[],
  answers: Readonly<Record<string, string>>,
): Result<M> {
  const problems: Problem[] = [];
  let answered: AnyMatch = match;
  for (const [id, answer] of Object.entries(answers)) {
    const question = questions.find((each) => each.id === id);
    if (question === undefined) {
      problems.push({
        where: { column: id },
        got: 'an answer to a question that this sheet does not ask',
        expected: questions.length === 0 ? 'no answer' : `an answer to one of ${questions.map((each) => each.id).join(', ')}`,
        fix: 'Leave the answer out, or correct its name.',
      });
      continue;
    }
    const value = valueIn(question, answer.trim());
    if (value instanceof CellFault)
      problems.push({ where: { column: id }, got: answer, expected: value.expected, fix: value.fix });
    else answered = withAnswer(answered, question, value);
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: answered as M };
}

function valueIn({ ask, choices, cells }: SheetQuestion, answer: string): string | number | CellFault {
  if (answer === '') return new CellFault('an answer', 'Write one, or leave the question open.');
  if (ask === 'insect' || ask === 'insectName') return insectNamed(answer);
  if (ask === 'design' || ask === 'designName') return designNamed(answer);
  if (ask === 'crop') return canonicalCrop(answer);
  if (ask === 'farm' || ask === 'field') return answer;
  if (ask === 'year') {
    const year = Number(answer);
    return /^\d{4}$/.test(answer) && year >= 1900 && year <= 2200
      ? year
      : new CellFault('a year of four figures', `Write it as 2025; ${cells} days need it.`);
  }
  if (ask === 'hungOn') {
    if (answer === 'first-date' || isoDay.safeParse(answer).success) return answer;
    return new CellFault('a day as YYYY-MM-DD, or first-date', 'Write the day on which the traps were hung.');
  }
  if (ask === 'source') return answer;
  if (ask === 'clock') {
    const hours = Number(answer);
    return Math.abs(hours) <= 14 ? hours : new CellFault('hours from −14 to 14', 'Write for example -5.');
  }
  if (!choices.includes(answer)) return new CellFault(`one of ${choices.join(', ')}`, 'Use one of these words.');
  return ask === 'dayMeans' ? Number(answer) : answer;
}

function withAnswer(match: AnyMatch, { ask, about }: SheetQuestion, value: string | number): AnyMatch {
  if (match.kind === 'weather') {
    const part = ask === 'source' ? 'sourceId' : ask === 'clock' ? 'addHours' : ask;
    return { ...match, [part]: value };
  }
  if (ask === 'word') return { ...match, words: { ...match.words, [about!]: value } } as SheetMatch;
  if (ask === 'insectName') return { ...match, insects: { ...match.insects, [about!]: value } } as SheetMatch;
  if (ask === 'designName') return { ...match, designs: { ...match.designs, [about!]: value } } as SheetMatch;
  if (ask === 'dayMeans') return { ...match, dayShift: value } as SheetMatch;
  if (ask === 'dateOrder' || ask === 'year' || ask === 'figures' || ask === 'hungOn')
    return { ...match, [ask]: value } as SheetMatch;
  return { ...match, constants: { ...match.constants, [ask]: value } } as SheetMatch;
}

/** A match as somebody may have written it. */
export function readMatch(value: unknown): Result<AnyMatch> {
  // The whole proposal may have been kept, of which the match is a part.
  const inner = typeof value === 'object' && value !== null && 'match' in value ? value.match : value;
  const parsed = sheetProposalSchema.shape.match.unwrap().safeParse(inner);
  if (parsed.success) return { ok: true, value: parsed.data };
  return {
    ok: false,
    problems: parsed.error.issues.map(({ path, message }) => ({
      where: { column: path.join('.') || 'match' },
      got: 'a match that does not read',
      expected: message,
      fix: 'Correct this part of the match, or let it be proposed again.',
    })),
  };
}
