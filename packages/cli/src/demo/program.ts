import {
  addDays,
  type CheckRecord,
  type Day,
  day,
  type FieldRecord,
  formatDay,
  type LureRecord,
  type Program,
  type SampleRecord,
  type TrapRecord,
} from '@duskwatch/core';
import { farmRounds, localPressure, SCOUTING, simulateTrap } from './checks.ts';
import { type DemoFarm, type DemoField, FARMS, FIELDS, MILL, TIME_ZONE } from './farms.ts';
import { heatSinceNewYear, type MothsPerNight, simulateFlight } from './flights.ts';
import { pastSamples } from './infestation.ts';
import { type DemoTrap, INSECTS, type InsectCode, TRAPS, trapIdOf } from './network.ts';
import { PLANNING } from './planning.ts';
import { type Random, randomFor } from './prng.ts';
import { DECISIONS, OWN_RULES, SAMPLES, TREATMENTS } from './scouting.ts';
import { sownOn, stageNotes } from './stages.ts';
import { SKIPS, storiesOf } from './stories.ts';
import { trueWeather, WEATHER_SOURCE, weatherRecords } from './weather.ts';

const PINNED_ON = '2026-07-15';
const SEASONS = [2024, 2025, 2026] as const;
/** The farm whose sheet of the newest round has not been entered yet: it comes as a file, with slips of the pen. */
export const UNENTERED_FARM = 'Ivelow';

/** Mean length of a degree of latitude, kilometres. */
const KM_PER_DEGREE = 111.2;
/** Fields and stations lie this far, at most, from the farm. */
const FARM_REACH_KM = 0.45;

const farmByName = new Map(FARMS.map((farm) => [farm.name, farm]));
const farmByCode = new Map(FARMS.map((farm) => [farm.code, farm]));

/** A spot on a farm, to about 10 m. */
function spotOn(farm: DemoFarm, label: string): { latitude: number; longitude: number } {
  const random = randomFor(`spot ${label}`);
  const offset = () => (random() * 2 - 1) * FARM_REACH_KM;
  const north = farm.kmNorth + offset();
  const east = farm.kmEast + offset();
  const round = (degrees: number) => Math.round(degrees * 1e4) / 1e4;
  return {
    latitude: round(MILL.latitude + north / KM_PER_DEGREE),
    longitude: round(MILL.longitude + east / (KM_PER_DEGREE * Math.cos((MILL.latitude * Math.PI) / 180))),
  };
}

const fieldRecord = (field: DemoField): FieldRecord => ({
  fieldId: field.id,
  farm: field.farm,
  name: field.name,
  crop: field.crop,
  growthHabit: field.habit,
  plantedOn: field.everySeason ? null : formatDay(sownOn(field, 2026)),
  harvestOn: field.harvest && `2026-${field.harvest}`,
  ...spotOn(farmByName.get(field.farm)!, field.id),
  timeZone: TIME_ZONE,
  weatherSource: WEATHER_SOURCE,
});

const HUNG = { HZ: '06-05', ON: '05-12', SF: '06-10', MC: '06-02' } satisfies Record<InsectCode, string>;
const TAKEN_DOWN = { HZ: '09-28', ON: '09-10', SF: '09-28', MC: '08-20' } satisfies Record<InsectCode, string>;

const aFewDays = (random: Random): number => Math.floor(random() * 6) - 2;

interface TrapSeasonRecords {
  readonly farm: DemoFarm;
  readonly trap: TrapRecord;
  readonly lures: readonly LureRecord[];
  readonly checks: readonly CheckRecord[];
}

function trapSeason(trap: DemoTrap, year: number, flight: MothsPerNight): TrapSeasonRecords {
  const farm = farmByCode.get(trap.station.slice(0, 2))!;
  const trapId = trapIdOf(trap, year);
  const stories = storiesOf(trapId);
  const random = randomFor(`season ${trapId}`);
  const planned = addDays(day(`${year}-${HUNG[trap.insect]}`), aFewDays(random));
  const down = addDays(day(`${year}-${TAKEN_DOWN[trap.insect]}`), aFewDays(random));
  const late = stories.find((s) => s.kind === 'hung-late');
  const hungOn: Day = late ? late.on : planned;
  const pinned = day(PINNED_ON);
  const seasonEnd = Math.min(down, pinned) as Day;
  const pressure = localPressure(farm.name, trap.insect, trapId);
  const { checks, lures } = simulateTrap({
    trapId,
    farm,
    design: trap.design,
    rounds: farmRounds(farm, year, pinned),
    hungOn,
    through: seasonEnd,
    stories,
    moths: (night) => pressure * flight(night),
  });
  return {
    farm,
    trap: {
      trapId,
      station: `${farm.name} ${trap.station.slice(2)}`,
      insect: INSECTS[trap.insect],
      design: trap.design,
      ...spotOn(farm, trap.station),
      hungOn: formatDay(hungOn),
      takenDownOn: down <= pinned ? formatDay(down) : null,
      informs: [...trap.informs],
    },
    lures,
    checks,
  };
}

/** What the corn borer traps of a farm would catch a night, fit and with fresh lures; null where there are none. */
const cornBorersAt =
  (flight: MothsPerNight) =>
  (farm: DemoFarm, year: number): MothsPerNight | null => {
    const traps = TRAPS.filter(({ station, insect }) => insect === 'ON' && station.startsWith(farm.code));
    if (traps.length === 0) return null;
    const shares = traps.map((trap) => localPressure(farm.name, 'ON', trapIdOf(trap, year)) * SCOUTING.designShare[trap.design]);
    const share = shares.reduce((sum, one) => sum + one, 0) / shares.length;
    return (night) => share * flight(night);
  };

/** The samples written by hand stand before those made up. */
const notWalkedAlready = ({ fieldId, insect, sampledOn }: SampleRecord): boolean =>
  !SAMPLES.some((known) => known.fieldId === fieldId && known.insect === insect && known.sampledOn === sampledOn);

interface Demo {
  readonly program: Program;
  /** The checks of the sheet that waits to be entered. */
  readonly unentered: readonly CheckRecord[];
}

/** The whole demo: same result every time. */
export function simulateDemo(): Demo {
  const truth = trueWeather();
  const heat = heatSinceNewYear(truth);
  const flights = Object.fromEntries(
    (Object.keys(INSECTS) as InsectCode[]).map((insect) => [insect, simulateFlight(insect, truth, heat)]),
  ) as Record<InsectCode, MothsPerNight>;
  const seasons = SEASONS.flatMap((year) =>
    TRAPS.filter((trap) => farmByCode.get(trap.station.slice(0, 2))!.joined <= year).map((trap) =>
      trapSeason(trap, year, flights[trap.insect]),
    ),
  );
  const unenteredRound = formatDay(farmRounds(farmByName.get(UNENTERED_FARM)!, 2026, day(PINNED_ON)).at(-1)!);
  const waits = (season: TrapSeasonRecords) => (check: CheckRecord) =>
    season.farm.name === UNENTERED_FARM && check.checkedOn === unenteredRound;
  const stages = FIELDS.filter((field) => !field.stageUnwritten).flatMap((field) => {
    const farm = farmByName.get(field.farm)!;
    const years = SEASONS.filter((year) => year === 2026 || (field.everySeason && farm.joined <= year));
    return years.flatMap((year) => stageNotes(field, year, farmRounds(farm, year, day(PINNED_ON))));
  });
  const visitsTo = (farm: DemoFarm) => {
    const checks = seasons.filter((season) => season.farm === farm).flatMap((season) => season.checks);
    return [...new Set(checks.map(({ checkedOn }) => day(checkedOn)))].sort((a, b) => a - b);
  };
  return {
    program: {
      settings: {
        name: "Ombrel Vale Growers' Co-operative",
        invented: true,
        pinnedOn: PINNED_ON,
        region: 'Northeastern United States',
      },
      fields: FIELDS.map(fieldRecord),
      stages,
      traps: seasons.map((s) => s.trap),
      lures: seasons.flatMap((s) => s.lures),
      checks: seasons.flatMap((s) => s.checks.filter((check) => !waits(s)(check))),
      skips: [...SKIPS],
      weather: weatherRecords(truth),
      sources: [],
      normals: [],
      samples: [...pastSamples(FIELDS, farmByName, cornBorersAt(flights.ON), visitsTo).filter(notWalkedAlready), ...SAMPLES],
      treatments: [...TREATMENTS],
      decisions: [...DECISIONS],
      rules: [...OWN_RULES],
      ...PLANNING,
      answers: [],
    },
    unentered: seasons.flatMap((s) => s.checks.filter(waits(s))),
  };
}

/** An invented growers' co-operative in an invented valley, as of 15 July 2026. */
export const buildDemoProgram = (): Program => simulateDemo().program;
