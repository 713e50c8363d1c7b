/** Reads files beside the page, so that a large one stops nobody's scrolling. */
import { emptyProgram } from '@duskwatch/core';
import { type AnyMatch, answerMatch, applyAnyMatch, picturesOf, proposeMatch, rememberedAnswer } from '@duskwatch/exchange/sheet';
import type { Answer, Ask } from './messages.ts';

let open: {
  readonly ask: Ask & { readonly ask: 'propose' };
  readonly match: AnyMatch;
  readonly questions: Parameters<typeof answerMatch>[1];
} | null = null;

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
  return ask.ask === 'propose' ? propose(ask) : apply(ask.answers);
}

async function propose(ask: Ask & { readonly ask: 'propose' }): Promise<Answer> {
  const { bytes, file, held, earlier } = ask;
  const looked = await proposeMatch(bytes, file, { existing: { ...emptyProgram(), ...held } });
  if (!looked.ok) return { is: 'refused', problems: looked.problems };
  const { proposal, grids } = looked.value;
  open = proposal.match === null ? null : { ask, match: proposal.match, questions: proposal.questions };
  const answers = Object.fromEntries(
    proposal.questions.map((question) => [question.id, rememberedAnswer(question, earlier) ?? '']),
  );
  return { is: 'proposed', proposal, pictures: picturesOf(grids, proposal.match), answers };
}

async function apply(answers: Readonly<Record<string, string>>): Promise<Answer> {
  if (open === null) throw new Error('no file was read');
  const given = Object.fromEntries(Object.entries(answers).filter(([, answer]) => answer.trim() !== ''));
  const answered = answerMatch(open.match, open.questions, given);
  if (!answered.ok) return { is: 'refused', problems: answered.problems };
  const { bytes, file, held } = open.ask;
  const read = await applyAnyMatch(bytes, answered.value, { ...emptyProgram(), ...held }, file);
  return read.ok ? { is: 'applied', match: answered.value, records: read.value } : { is: 'refused', problems: read.problems };
}
