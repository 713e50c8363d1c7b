/** One trap's season: when it was hung, when its lure was changed, who came by, and what was written down. */
import { addDays, type CheckRecord, type Day, day, formatDay, type LureRecord, type TrapDesign } from '@duskwatch/core';
import type { DemoFarm } from './farms.ts';
import type { MothsPerNight } from './flights.ts';
import { type Random, randomFor } from './prng.ts';
import { gamma, negativeBinomial, poisson } from './samplers.ts';
import type { Story } from './stories.ts';

/** Invented. */
export const SCOUTING = {
  /** A round falls a day early or late; is missed; passes one trap by. */
  jitter: 0.16,
  missedRound: 0.05,
  passedBy: 0.02,
  /** Spread between farms and between the traps of a farm (gamma shapes), and from night to night (negative binomial k). */
  farmShape: 3,
  trapShape: 8,
  nightlyK: 1.6,
  /** Share of its catch that a lure past its life still draws. */
  spentLureShare: 0.45,
  /** A check without a count of other moths, where they are counted at all. */
  othersBlank: 0.12,
  othersPerNight: 0.35,
  lureLifeDays: 28,
  /** Catch against a wire cone. */
  designShare: { 'wire-cone': 1, 'mesh-cone': 0.42, bucket: 0.6, delta: 0.3, other: 0.5 } satisfies Record<TrapDesign, number>,
} as const;

/** Twice a week. */
const USUAL_GAP_DAYS = 4;

export interface TrapSeason {
  readonly trapId: string;
  readonly farm: DemoFarm;
  readonly design: TrapDesign;
  readonly hungOn: Day;
  readonly rounds: readonly Day[];
  /** Last day of the season on which anybody may come. */
  readonly through: Day;
  readonly stories: readonly Story[];
  /** Mean moths a night at this trap, were it a fit wire cone with a fresh lure. */
  readonly moths: MothsPerNight;
}

type StoryOf<K extends Story['kind']> = Extract<Story, { kind: K }>;

const storyOn = <K extends 'doubtful' | 'no-visits'>(stories: readonly Story[], kind: K, on: Day) =>
  stories.find((s): s is StoryOf<K> => s.kind === kind && on >= s.from && on <= s.until);

const weekdayOf = (on: Day): number => (on + 4) % 7;

const ROUNDS = { from: '04-28', to: '10-05' } as const;

/** A farm's rounds in one year: twice a week on its days, give or take one, and not always. */
export function farmRounds(farm: DemoFarm, year: number, through: Day): Day[] {
  const random = randomFor(`rounds ${farm.name} ${year}`);
  const rounds: Day[] = [];
  const lastDay = day(`${year}-${ROUNDS.to}`);
  for (let on = day(`${year}-${ROUNDS.from}`); on <= lastDay && on <= through; on = addDays(on, 1)) {
    if (!farm.rounds.includes(weekdayOf(on))) continue;
    const shift = random() < SCOUTING.jitter ? (random() < 0.5 ? -1 : 1) : 0;
    const round = addDays(on, shift);
    if (random() >= SCOUTING.missedRound && round <= through) rounds.push(round);
  }
  return rounds;
}

/** The rounds on which this trap was looked at. */
function visitDays(season: TrapSeason, random: Random): Day[] {
  return season.rounds.filter(
    (on) =>
      on > season.hungOn && on <= season.through && !storyOn(season.stories, 'no-visits', on) && random() >= SCOUTING.passedBy,
  );
}

/** A lure at hanging, then one at the last visit before its life runs out. */
function lureDays(season: TrapSeason, visits: readonly Day[]): Day[] {
  const forgotten = season.stories.find((s) => s.kind === 'lure-forgotten');
  const placed = [season.hungOn];
  for (const [index, visit] of visits.entries()) {
    const next = visits[index + 1] ?? addDays(visit, USUAL_GAP_DAYS);
    const due = next - placed.at(-1)! > SCOUTING.lureLifeDays;
    if (due && !(forgotten && visit >= forgotten.from)) placed.push(visit);
  }
  return placed;
}

/** How strongly a farm and a trap draw an insect, against the valley's average. */
export function localPressure(farm: string, insect: string, trapId: string): number {
  return (
    gamma(randomFor(`farm ${farm} ${insect}`), SCOUTING.farmShape, 1) * gamma(randomFor(`trap ${trapId}`), SCOUTING.trapShape, 1)
  );
}

export function simulateTrap(season: TrapSeason): { checks: CheckRecord[]; lures: LureRecord[] } {
  const random = randomFor(`checks ${season.trapId}`);
  const visits = visitDays(season, random);
  const placed = lureDays(season, visits);
  const lifeDays = season.stories.some((s) => s.kind === 'lure-life-unwritten') ? null : SCOUTING.lureLifeDays;
  const lures = placed.map((on) => ({ trapId: season.trapId, placedOn: formatDay(on), lifeDays }));
  const falls = season.stories
    .filter((s) => s.kind === 'down')
    .map(({ from, until, note }) => {
      const hungAgain = until === null ? undefined : visits.find((v) => v >= until);
      return { from, hungAgain: hungAgain ?? Number.POSITIVE_INFINITY, note };
    });
  const checks: CheckRecord[] = [];
  const pending = [...season.stories];
  const due = <K extends 'left-in-trap' | 'second-visit' | 'mistyped'>(kind: K, on: Day): StoryOf<K> | null => {
    const index = pending.findIndex((s) => s.kind === kind && s.on <= on);
    return index < 0 ? null : (pending.splice(index, 1)[0] as StoryOf<K>);
  };

  let inTrap = 0;
  let night = season.hungOn;
  for (const visit of visits) {
    const nights = visit - night;
    for (; night < visit; night = addDays(night, 1)) {
      const lureAge = night - placed.findLast((on) => on <= night)!;
      const lure = lureAge > SCOUTING.lureLifeDays ? SCOUTING.spentLureShare : 1;
      const doubt = storyOn(season.stories, 'doubtful', night)?.share ?? 1;
      const standing = falls.some((f) => night >= f.from && night < f.hungAgain) ? 0 : 1;
      const mean = season.moths(night) * SCOUTING.designShare[season.design] * lure * doubt * standing;
      inTrap += negativeBinomial(random, mean, SCOUTING.nightlyK);
    }
    const others = poisson(random, SCOUTING.othersPerNight * nights);
    const othersWritten = season.farm.countsOthers && random() >= SCOUTING.othersBlank;
    const write = (visitNumber: number, targetCount: number | null, otherCount: number | null, rest: Partial<CheckRecord> = {}) =>
      checks.push({
        trapId: season.trapId,
        checkedOn: formatDay(visit),
        visit: visitNumber,
        targetCount,
        otherCount,
        condition: 'fit',
        emptied: true,
        note: null,
        ...rest,
      });

    const fall = falls.find((f) => visit > f.from && visit <= f.hungAgain);
    if (fall) {
      write(1, null, null, { condition: 'unfit', unfitReason: 'down', note: fall.note });
      inTrap = 0;
      continue;
    }
    const doubtful = storyOn(season.stories, 'doubtful', visit);
    const left = due('left-in-trap', visit);
    const again = due('second-visit', visit);
    const typed = due('mistyped', visit) ? inTrap * 10 : inTrap;
    write(1, typed, othersWritten ? others : null, {
      ...(doubtful && { condition: 'doubtful', note: doubtful.note }),
      ...(left && { emptied: false, note: left.note }),
    });
    if (!left) inTrap = 0;
    if (again) write(2, poisson(random, 0.6), null, { note: again.note });
  }
  return { checks, lures };
}
