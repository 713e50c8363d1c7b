/** Reads files beside the page, so that a large one stops nobody's scrolling. */
import {
  emptyProgram,
  type Program,
  type ProgramSettings,
  RECORD_KINDS,
  type RecordKind,
  type SheetReading,
} from '@duskwatch/core';
import {
  type AnyMatch,
  answerMatch,
  applyAnyMatch,
  correct,
  isProgramZip,
  picturesOf,
  proposeMatch,
  readingOfProgram,
  readProgramZip,
  rememberedAnswer,
  type SheetLookedAt,
} from '@duskwatch/exchange/sheet';
import type { Answer, Ask, Progress } from './messages.ts';

/** What the file became, until it is kept. */
let became: {
  readonly file: string;
  readonly reading: SheetReading;
  readonly match: AnyMatch | null;
  readonly records: Partial<Omit<Program, 'settings'>>;
  readonly settings?: ProgramSettings;
} | null = null;

let open: { readonly ask: Ask & { readonly ask: 'propose' }; readonly looked: SheetLookedAt } | null = null;

const at = (stage: Progress['stage']) => self.postMessage({ is: 'progress', stage } satisfies Progress);

self.addEventListener('message', (event: MessageEvent<Ask>) => {
  void answer(event.data).then(
    (said) => self.postMessage(said),
    (error: unknown) =>
      self.postMessage({
        is: 'refused',
        problems: [
          {
            where: {},
            got: String(error),
            expected: 'a file that can be read',
            fix: 'Save it anew as CSV or XLSX, and try that.',
          },
        ],
      } satisfies Answer),
  );
});

async function answer(ask: Ask): Promise<Answer> {
  if (ask.ask === 'propose') return propose(ask);
  if (ask.ask === 'pack') return packed(ask.importId);
  return ask.ask === 'correct' ? corrected(ask) : apply(ask.answers);
}

async function propose(ask: Ask & { readonly ask: 'propose' }): Promise<Answer> {
  const { bytes, file, held, earlier } = ask;
  at('opening');
  if (isProgramZip(bytes)) {
    at('reading');
    const read = readProgramZip(bytes, file);
    if (!read.ok) return { is: 'refused', problems: read.problems };
    const { settings, ...records } = read.value;
    return applied({ file, reading: readingOfProgram(records), match: null, records, settings });
  }
  at('understanding');
  const looked = await proposeMatch(bytes, file, { existing: { ...emptyProgram(), ...held } });
  if (!looked.ok) return { is: 'refused', problems: looked.problems };
  open = { ask, looked: looked.value };
  return proposed(looked.value, (question) => rememberedAnswer(question, earlier));
}

/** What was answered stays answered, where it is still asked. */
function corrected({ correction, answers }: Ask & { readonly ask: 'correct' }): Answer {
  if (open === null) throw new Error('no file was read');
  const { file, held, earlier } = open.ask;
  const looked = correct(open.looked, correction, { existing: { ...emptyProgram(), ...held }, file });
  if (!looked.ok) return { is: 'refused', problems: looked.problems };
  open = { ...open, looked: looked.value };
  return proposed(looked.value, (question) => answers[question.id] || rememberedAnswer(question, earlier));
}

function proposed(
  { proposal, grids }: SheetLookedAt,
  answerOf: (question: SheetLookedAt['proposal']['questions'][number]) => string | null,
): Answer {
  const answers = Object.fromEntries(proposal.questions.map((question) => [question.id, answerOf(question) ?? '']));
  return { is: 'proposed', proposal, pictures: picturesOf(grids, proposal.match), answers };
}

async function apply(answers: Readonly<Record<string, string>>): Promise<Answer> {
  if (open === null) throw new Error('no file was read');
  const { match, questions, reading } = open.looked.proposal;
  if (match === null) throw new Error('nothing is to be matched');
  const given = Object.fromEntries(Object.entries(answers).filter(([, answer]) => answer.trim() !== ''));
  const answered = answerMatch(match, questions, given);
  if (!answered.ok) return { is: 'refused', problems: answered.problems };
  const { bytes, file, held } = open.ask;
  at('reading');
  const read = await applyAnyMatch(bytes, answered.value, { ...emptyProgram(), ...held }, file, open.looked);
  if (!read.ok) return { is: 'refused', problems: read.problems };
  const { settings: _none, ...records } = read.value;
  return applied({ file, reading, match: answered.value, records });
}

function applied(made: NonNullable<typeof became>): Answer {
  became = made;
  const { checks = [], weather = [] } = made.records;
  const counts = Object.fromEntries(RECORD_KINDS.map((kind) => [kind, made.records[kind]?.length ?? 0]));
  return {
    is: 'applied',
    reading: made.reading,
    match: made.match,
    counts: counts as Record<RecordKind, number>,
    first: { checks: checks.slice(0, SHOWN), weather: weather.slice(0, SHOWN) },
  };
}

function packed(importId: string): Answer {
  if (became === null) throw new Error('nothing was read');
  return { is: 'packed', body: new Blob([JSON.stringify({ importId, ...became })], { type: 'application/json' }) };
}

/** Records that a page shows before they are kept. */
const SHOWN = 200;
