/** What fetching from a service is made of, without the fetching: addresses to ask, and what is read of the answers. */
import { type IsoDay, type Problem, type Result, refuse, type SourceRecord, type WeatherRecord } from '@duskwatch/core';
import type { z } from 'zod';

interface Span {
  readonly from: IsoDay;
  /** Today at the source: days before it are over, it and those after are still to come. */
  readonly today: IsoDay;
}

/** Yields one address after another, is given what stands there, and ends with the days, or with what was wrong. */
type Asking = Generator<string, Result<readonly WeatherRecord[]>, string>;

export type Ask = (source: SourceRecord, span: Span, origin: string) => Asking;

export const isProblem = (value: unknown): value is Problem =>
  typeof value === 'object' && value !== null && 'expected' in value && 'fix' in value;

/** An answer by its schema; what does not fit is said with what the service said itself. */
export function readJson<T>(text: string, schema: z.ZodType<T>): T | Problem {
  let said: unknown;
  try {
    said = JSON.parse(text);
  } catch {
    return otherAnswer(text);
  }
  const parsed = schema.safeParse(said);
  return parsed.success ? parsed.data : otherAnswer(text, parsed.error.issues[0]?.path.join('.'));
}

const SHOWN = 200;

export const otherAnswer = (text: string, at?: string): Problem => ({
  where: { ...(at && { column: at }) },
  got: text.trim().slice(0, SHOWN) || 'an empty answer',
  expected: 'an answer as the service describes it',
  fix: 'The service may have changed: look at its documentation, and bring the days by file meanwhile.',
});

export const refused = (problem: Problem) => refuse(problem);

/** Beyond any on record, as for files: figures that no weather has are in another unit than the service said. */
const COLDEST_C = -89.2;
const HOTTEST_C = 56.7;
const MOST_MM = 1_825;

/** The days, or what no weather can be. */
export function plausible(days: readonly WeatherRecord[]): Result<readonly WeatherRecord[]> {
  const odd = days.find(
    ({ tminC, tmaxC, precipitationMm }) =>
      [tminC, tmaxC].some((celsius) => celsius !== null && (celsius < COLDEST_C || celsius > HOTTEST_C)) ||
      (precipitationMm !== null && (precipitationMm < 0 || precipitationMm > MOST_MM)) ||
      (tminC !== null && tmaxC !== null && tminC > tmaxC),
  );
  if (odd === undefined) return { ok: true, value: days };
  return refuse({
    where: { column: odd.date },
    got: `${odd.tminC} to ${odd.tmaxC} °C, ${odd.precipitationMm} mm`,
    expected: 'weather that can be: −89.2 to 56.7 °C with the low below the high, 0 to 1,825 mm',
    fix: 'The service may have changed its units: nothing of this answer was kept. Bring the days by file meanwhile.',
  });
}

/** Sums and conversions leave digits that nobody measured. */
export const tidy = (value: number): number => Math.round(value * 100) / 100;
