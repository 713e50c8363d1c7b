import { citation, type Standing } from '@duskwatch/core';
import { useWording } from '../text/wording.ts';

/** The work a fact is taken from, in its own language, and how far to trust it. */
export function Cited({ source, standing }: { readonly source: string | null; readonly standing: Standing }) {
  const wording = useWording();
  const cited = citation(source);
  if (cited === null) return wording.standing[standing];
  return (
    <>
      <cite lang="en">{cited}</cite> ({wording.standing[standing]})
    </>
  );
}
