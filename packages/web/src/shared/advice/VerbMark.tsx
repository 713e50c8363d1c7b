/** The mark of a verb: its letter in a shape of its own, so that neither colour nor language is needed to tell them apart. */
import type { Verb } from '@duskwatch/core';
import { useWording } from '../../text/wording.ts';

type Said = Exclude<Verb, 'none'>;

/** Among words and in tables. What it means is said beside it, so that readers need not hear a letter. */
export function VerbMark({ verb }: { verb: Verb }) {
  const wording = useWording();
  if (verb === 'none') return <span className="mark mark-none" aria-hidden="true" />;
  return (
    <span className={`mark mark-${verb}`} aria-hidden="true">
      {wording.verb[verb][0]}
    </span>
  );
}

/** Within 20 pixels around the middle: a square, a ring, a shield, a broken square, a thin ring. */
const SHAPES: Readonly<Record<Said, string>> = {
  decide: 'M-9,-9H9V9H-9Z',
  scout: 'M-8.5,0a8.5,8.5 0 1,0 17,0a8.5,8.5 0 1,0 -17,0Z',
  covered: 'M-8.5,-9H8.5V0C8.5,6 4,8.5 0,9.5C-4,8.5 -8.5,6 -8.5,0Z',
  blind: 'M-8.5,-8.5H8.5V8.5H-8.5Z',
  watch: 'M-8.5,0a8.5,8.5 0 1,0 17,0a8.5,8.5 0 1,0 -17,0Z',
};

/** The same mark within a drawing, around its origin. */
export function VerbGlyph({ verb }: { verb: Verb }) {
  const wording = useWording();
  if (verb === 'none') return <circle className="glyph glyph-none" r={1.6} />;
  return (
    <g className={`glyph glyph-${verb}`}>
      <path d={SHAPES[verb]} />
      <text y={4} textAnchor="middle">
        {wording.verb[verb][0]}
      </text>
    </g>
  );
}
