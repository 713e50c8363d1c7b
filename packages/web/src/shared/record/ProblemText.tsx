import { namesByCatalogue, type Problem, problemInWords } from '@duskwatch/core';
import { language } from '../../text/language.ts';
import { recordWords } from '../../text/record.ts';

const names = namesByCatalogue(language);

/** What is wrong, what was found and what to do about it. */
export function ProblemText({ problem }: { readonly problem: Problem }) {
  const said = problemInWords(problem, language, names);
  const lang = said.language === language ? undefined : said.language;
  return (
    <>
      <b lang={lang}>{recordWords.expected(said.expected)}</b>, {recordWords.got(problem.got)}.{' '}
      <span lang={lang}>{said.fix}</span>
    </>
  );
}

/** The same as text: for a message that passes. */
export const problemText = (problem: Problem): string => {
  const { expected, fix } = problemInWords(problem, language, names);
  return `${recordWords.expected(expected)}. ${fix}`;
};
