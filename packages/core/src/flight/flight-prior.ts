/**
 * What is known of flights before a single moth is counted. Each figure is a normal belief about a logarithm: it keeps
 * a handful of moths from being read as a flight one night wide, and one ragged flight from being read as two.
 */
import { degreeDaysIn, type TemperatureUnit } from '../base/temperature.ts';
import type { Belief } from './belief.ts';
import type { ExpectedFlight } from './expected-flights.ts';
import type { ScatterBelief } from './pooled-catch.ts';
import { SKEW_BELIEF } from './skew.ts';

/** What model and past seasons tell of this season. */
export interface Foreknowledge {
  readonly expected: readonly ExpectedFlight[];
  /** Of ln stray moths per mean trap and night; null: nothing. */
  readonly stray: Belief | null;
  /** Weights of the skews (`SKEWS`); null: nothing but what is believed of any flight. */
  readonly skews: readonly number[] | null;
}

export interface FlightPrior {
  /** Of ln σ, the width of a flight in degree-days. */
  readonly logWidth: Belief;
  /** Of ln (peak − peak before), in degree-days. */
  readonly logGap: Belief;
  /** Of ln moths of one flight in one trap. */
  readonly logMoths: Belief;
  /** Of ln stray moths per trap and night. */
  readonly logStray: Belief;
  /** Past seasons tell how many stray moths there are, flight or no flight. */
  readonly strayKnown: boolean;
  readonly expected: readonly ExpectedFlight[];
  /** Weights of the skews. */
  readonly skews: readonly number[];
  /** A peak may lie outside the nights seen, but the less believed the further: one σ in degree-days. */
  readonly outside: number;
  /** Spread of ln moths of a flight that was to be expected, but whose size nothing tells: as good as none. */
  readonly anySize: number;
  /** Of ln (moths of the whole flight / moths so far) of a flight that nothing led one to expect. */
  readonly yetToCome: Belief;
  /** Density of a peak that may lie anywhere in a season, per degree-day. */
  readonly anywhere: number;
  /** Share of flights that come where none was to be expected. */
  readonly surprise: number;
}

/**
 * Width: in the European corn borer's table the first moth of a flight comes 257 and 333 °F·d before its peak; taken as
 * about two σ, 147 °F·d. Own reading of the catalogue; the belief runs (±1 σ) from 91 to 219.
 */
const WIDTH_C = 147 / 1.8;
const WIDTH_LOG_SD = 0.4;
/**
 * Gap: adult to adult 872.8 (corn earworm), 1102 (peaks of European corn borer), 1157 °F·d (black cutworm): about 1040.
 * Own reading of the catalogue; the belief runs from 770 to 1400.
 */
const GAP_C = 1040 / 1.8;
const GAP_LOG_SD = 0.3;
/** Stray moths: one in twenty of the season's mean night, give or take a factor of 4.5. Own choice. */
const STRAY_SHARE = 0.05;
const STRAY_LOG_SD = 1.5;
/** A flight may be a seventh of the season's moths or seven times as many. Own choice, weak. */
const MOTHS_LOG_SD = 2;
const ANY_SIZE_LOG_SD = 4;
/**
 * A flight that comes unexpected is met anywhere in its course: were any share as likely as any other, half of such flights
 * would have flown more than a half. Spread: own choice, a little more than that of such shares, which is 1.
 */
const YET_TO_COME = { mean: Math.LN2, sd: 1.2 };
/** One flight in twenty comes where neither model nor past seasons have one, anywhere in a season of 1500 °F·d. Own choice. */
const SURPRISE = 0.05;
const SEASON_C = 1500 / 1.8;

/**
 * Scatter of counts about the curves before any is seen, worth six visits. Of one trap's visit: k about 4, as between
 * visits of one trap over 27 years, 4.5 (Battles et al. 2024, J. Insect Conserv.; computed from its open data). Of a
 * night for all traps together: a factor with log-sd about 0.5, own choice.
 */
export const SCATTER_BELIEF: ScatterBelief = { ofVisit: 0.25, ofNight: 0.3, visits: 6 };

export function flightPrior(
  unit: TemperatureUnit,
  mothsPerTrap: number,
  mothsPerNight: number,
  { expected = [], stray = null, skews = null }: Partial<Foreknowledge> = {},
): FlightPrior {
  const width = degreeDaysIn(WIDTH_C, unit);
  return {
    logWidth: { mean: Math.log(width), sd: WIDTH_LOG_SD },
    logGap: { mean: Math.log(degreeDaysIn(GAP_C, unit)), sd: GAP_LOG_SD },
    logMoths: { mean: Math.log(mothsPerTrap + 1), sd: MOTHS_LOG_SD },
    logStray: stray ?? { mean: Math.log(STRAY_SHARE * mothsPerNight), sd: STRAY_LOG_SD },
    strayKnown: stray !== null,
    expected,
    skews: skews ?? SKEW_BELIEF,
    outside: 2 * width,
    anySize: ANY_SIZE_LOG_SD,
    yetToCome: YET_TO_COME,
    anywhere: 1 / degreeDaysIn(SEASON_C, unit),
    surprise: SURPRISE,
  };
}
