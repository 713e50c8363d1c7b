/** The candidate closest to what was written, or null when none is close enough to be what was meant. */
export function nearest(written: string, candidates: Iterable<string>): string | null {
  return nearestFew(written, candidates, 1)[0] ?? null;
}

/** Up to `limit` candidates within a third of the longer word's letters, closest first. */
export function nearestFew(written: string, candidates: Iterable<string>, limit = 3): string[] {
  const wanted = plain(written);
  return [...candidates]
    .map((candidate) => ({ candidate, distance: editDistance(wanted, plain(candidate)) }))
    .filter(({ candidate, distance }) => distance <= Math.max(wanted.length, candidate.length) / 3)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, limit)
    .map(({ candidate }) => candidate);
}

const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');

/**
 * Fewest single-letter insertions, deletions, substitutions and swaps of neighbours that turn one word into the
 * other (optimal string alignment; Damerau 1964, Comm. ACM 7:171–176).
 */
export function editDistance(a: string, b: string): number {
  let [beforeLast, last]: [number[], number[]] = [[], Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const differs = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + differs);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, beforeLast[j - 2]! + 1);
      row.push(best);
    }
    [beforeLast, last] = [last, row];
  }
  return last[b.length]!;
}
