/** What each column of a table holds, in words; one that a schema gains and no words tell of does not compile. */
import type { ColumnHints } from './columns.ts';
import type { RecordKind, RecordOf } from './program.ts';

export type ColumnWords = string | readonly [about: string, hints: ColumnHints];

/** `targetCount` as a header says it: `target_count`. */
type Header<P extends string> = P extends `${infer First}${infer Rest}`
  ? `${First extends Lowercase<First> ? First : `_${Lowercase<First>}`}${Header<Rest>}`
  : P;

/** Told by the order of the rows, and by no column. */
type WithoutColumn = { readonly checks: 'visit' };

type Columns<K extends RecordKind> = Exclude<
  keyof RecordOf<K> & string,
  K extends keyof WithoutColumn ? WithoutColumn[K] : never
>;

/** In the order in which the columns are written. */
export const columnWords: { readonly [K in RecordKind]: { readonly [P in Columns<K> as Header<P>]: ColumnWords } } = {
  fields: {
    field_id: 'Identifier of the field, unique in the program.',
    farm: 'Farm the field belongs to.',
    name: 'Name people call the field by.',
    crop: 'Crop as a slug: sweet-corn, tomato, squash, pumpkin, pepper, potato, …',
    growth_habit: 'bush or vining, where a rule tells them apart.',
    planted_on: 'Day of planting.',
    harvest_on: 'Day of harvest, done or expected.',
    latitude: 'Degrees north, WGS 84.',
    longitude: 'Degrees east, WGS 84.',
    time_zone: 'IANA time zone, for example America/Halifax.',
    weather_source: ['Weather source that informs the field; needed only where a program has several.', { extension: true }],
  },
  stages: {
    field_id: 'Field observed.',
    observed_on: 'Day of the observation.',
    stage: 'Plain word of the crop (silk) or a BBCH code (63).',
  },
  traps: {
    trap_id: 'Identifier of the trap, unique in the program.',
    station: 'Place where the trap stands; several traps may share one.',
    insect: 'Slug of the scientific name: helicoverpa-zea.',
    design: 'Design of the trap.',
    latitude: 'Degrees north, WGS 84.',
    longitude: 'Degrees east, WGS 84.',
    hung_on: 'Day the trap was hung.',
    taken_down_on: 'Day the trap was taken down; empty while it hangs.',
    informs: 'Fields whose advice rests on this trap: field_ids with ; between.',
  },
  lures: {
    trap_id: 'Trap the lure was placed in.',
    placed_on: 'Day the lure was placed.',
    life_days: 'Days the maker says the lure lasts; empty when not known.',
  },
  checks: {
    trap_id: 'Trap visited.',
    checked_on: 'Day of the visit.',
    target_count: ['Moths of the target species; empty only at an unfit visit: not counted is not zero.', { needs: 'column' }],
    other_count: 'Moths of other species; empty when nobody counted them.',
    condition: 'State the trap was found in.',
    emptied: ['no when the moths were left in the trap; empty means yes.', { needs: 'nothing', empty: true }],
    unfit_reason: ['Why nothing can be known of the nights before an unfit visit.', { extension: true }],
    note: 'Anything the scout wrote.',
    photo: ['Photo taken at the visit, named by the SHA-256 of its bytes.', { extension: true }],
  },
  skips: {
    trap_id: 'Trap that was passed by.',
    skipped_on: 'Day on which it was passed by.',
    reason:
      'Why: keep-out (the re-entry time of a treatment was not over), water (no way through), locked (a gate or a door), no-time, not-found (the trap is not where it should be), unsafe, or other.',
    note: 'Anything the scout wrote.',
  },
  sources: {
    source_id: 'Weather source, as weather.csv names it.',
    name: 'Name in words.',
    kind: 'What its days are: station (measured there), grid (estimated for a square of a map), reanalysis (worked out afterwards); empty when not said.',
    latitude: 'Where it is, degrees north.',
    longitude: 'Degrees east.',
    elevation_m: 'Height above the sea, m.',
    time_zone: 'IANA zone whose days its days are.',
    fill_from: 'Another source, whose days stand where this one has none.',
    service:
      'Where its days are fetched: noaa-daily, us-forecast, norway-forecast, open-meteo, address, folder; empty when they are brought by hand or by file.',
    station_id: "The service's own name of the station.",
    address:
      'Of address: where a table of days is fetched, with {from} and {to} for the days; of folder: how the names of its files begin.',
    fetching: ['yes when days are fetched by themselves; empty means no.', { needs: 'nothing', empty: false }],
    terms_seen_on: "Day on which a coordinator confirmed the service's terms.",
  },
  weather: {
    source_id: 'Weather source, for example a station.',
    date: 'Day the figures belong to.',
    tmin_c: ['Lowest temperature of the day, °C; empty when missing.', { needs: 'column' }],
    tmax_c: ['Highest temperature of the day, °C; empty when missing.', { needs: 'column' }],
    precipitation_mm: 'Precipitation of the day, mm; empty when missing.',
    forecast_made_on: [
      'Day on which the figures were forecast; empty when they were measured. A measured day replaces a forecast one.',
      { extension: true },
    ],
  },
  normals: {
    source_id: 'Weather source, as weather.csv names it.',
    month: '1 for January to 12 for December.',
    tmin_c: [
      'Mean of the lowest temperatures of its days over many years, °C; tmin_f (°F) is read in its place.',
      { needs: 'column' },
    ],
    tmax_c: ['Mean of the highest, °C; tmax_f (°F) is read in its place.', { needs: 'column' }],
  },
  samples: {
    field_id: 'Field sampled.',
    insect: 'Slug of the scientific name.',
    sampled_on: 'Day of the sample.',
    kind: 'What was looked at: plants, ears, fruit, egg-masses, …',
    units_examined: 'How many of them were examined.',
    units_infested: 'How many of those were infested; empty when not recorded.',
    total_count: 'How many insects were found in all; empty when not counted.',
    by_place: [
      'Infested/examined at each place in the order walked, with ; between: 1/5;0/5;2/5. Empty when not written down.',
      { extension: true },
    ],
    photo: ['Photo of what was found, named by the SHA-256 of its bytes.', { extension: true }],
  },
  treatments: {
    field_id: 'Field treated.',
    insect: 'Slug of the scientific name of the insect treated against.',
    applied_on: 'Day of the treatment.',
    product: 'Product as the user names it.',
    protects_days: 'Days of protection; empty when not recorded.',
    reentry_hours: 'Re-entry interval in hours; empty when not recorded.',
    preharvest_days: 'Pre-harvest interval in days; empty when not recorded.',
    product_unknown: ['yes: nobody can say which product it was, and product is empty.', { extension: true }],
    applied_at: ["Time of day at which it began, by the field's own clock, such as 06:30.", { extension: true }],
    rate: ['How much of the product, in rate_unit.', { extension: true }],
    rate_unit: [
      'Unit of the rate: product on an area (l-per-ha, fl-oz-per-acre, …) or in the water it is mixed with (ml-per-l, g-per-l).',
      { extension: true },
    ],
    applicator: ['Who applied it, by name or licence.', { extension: true }],
  },
  decisions: {
    field_id: 'Field decided on.',
    insect: 'Slug of the scientific name.',
    decided_on: 'Day of the decision.',
    decision: 'not-treated: a decision was due and no treatment was made. not-scouted: nobody was sent to look.',
    reason:
      'Why: low-for-this-farm, sample-below (a sample found less than its figure), other-species (the moths were not the target), stage-not-at-risk, harvest-near, label-limit (the label allows no more, or not so close to harvest), weather, natural-enemies, cost, loss-accepted, adviser (a licensed adviser advised so), or other, said in the note.',
    note: 'Anything to add; needed where the reason is other.',
  },
  rules: {
    rule_id: 'Identifier of the rule.',
    crop: 'Crop slug the rule holds for.',
    insect: 'Slug of the scientific name.',
    design: 'Trap design the rule was made for; empty when it does not say.',
    stages: 'Stages at which the rule holds, with ; between; empty: any.',
    threshold: 'Moths per trap from which a decision is due.',
    per: 'Time the threshold is counted over.',
    interval_days: 'Days between protective decisions; empty when the rule gives none.',
    may: [
      'What a catch at the threshold may do: decide by itself, or send-scouting, after which the plants decide. Empty: decide.',
      { extension: true },
    ],
    valid_from: 'First day the rule holds; empty: always has.',
    valid_to: 'Last day the rule holds; empty: still does.',
    source: 'Where the rule comes from.',
  },
  seasons: {
    season: 'Year in which the growing year begins (1 January; south of the equator 1 July).',
    insects: ['Insects to trap: slugs with ; between; empty: those the program traps.', { needs: 'column' }],
    crops: 'Crops to trap in, with ; between; empty: all.',
    fields: 'Fields to trap for: field_ids with ; between; empty: all.',
    check_weekdays: [
      'Days of the week on which traps are checked: mon, tue, wed, thu, fri, sat, sun with ; between.',
      { needs: 'column' },
    ],
    lead_days: 'Days that traps hang before the earliest plausible flight.',
    trap_budget: 'No more traps than this in all.',
    most_traps: 'No more traps than this for an insect in one area.',
    risk_missed: 'Accepted probability (0–1) of missing a rule that is reached.',
    risk_false: 'Accepted probability (0–1) of reaching a rule in error.',
    reserve_share: 'Lures kept in reserve and lost, as a share of those placed: 0.15.',
    order_lead_days: 'Days from ordering lures to having them.',
    lures_keep_days: 'Days that ordered lures keep as stored; empty: a whole season.',
    currency: 'Currency of the budget, ISO 4217: USD.',
  },
  plans: {
    season: 'Season as in seasons.csv.',
    insect: 'Slug of the scientific name.',
    area: 'all, or a field_id of the area that the row is for.',
    design: 'Trap design.',
    traps: 'Traps in each area.',
    hang_on: 'Day to hang the traps.',
    take_down_on: 'Day to take them down.',
    lure_life_days: 'Days the maker says the lure lasts.',
    note: 'Anything to remember.',
  },
  prices: {
    item: 'What is bought or paid; replaces is the sum of a season for what the traps replace.',
    of: 'Design of the trap, insect of the lure, name of what is replaced; any where it makes no difference.',
    price: 'Price of one: a trap, a lure, a pair of gloves, a post, an hour, a kilometre.',
    currency: 'ISO 4217: USD.',
    note: 'Where the price is from.',
  },
  stock: {
    stock_id: 'Identifier of the package or shelf.',
    item: 'lure or trap.',
    of: 'Insect of the lures, design of the traps.',
    on_hand: 'How many there were when counted.',
    counted_on: 'Day they were counted.',
    worn_out: 'Traps of these that are fit for no further season; empty when not known.',
    opened_on: 'Day the package was opened; empty while it is closed.',
    expires_on: 'Last day on which the lures may be placed, as the package says.',
    storage: 'Where and how they are kept.',
  },
  answers: {
    question: 'The question: its kind and the figures it is about.',
    answer: 'right: it is as written. later: ask again some days on. declined: a suggestion not taken.',
    answered_on: 'Day of the answer.',
    note: 'Anything to add.',
  },
};
