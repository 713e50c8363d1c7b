/** Farms and fields of the demo. Every name and place is invented; the coordinates lie in the open Atlantic so that none is mistaken for real. */
export interface DemoFarm {
  readonly name: string;
  /** Two letters that begin the farm's station codes. */
  readonly code: string;
  /** Distance from the valley's mill, kilometres. */
  readonly kmEast: number;
  readonly kmNorth: number;
  /** First season in the network. */
  readonly joined: 2024 | 2025 | 2026;
  /** Weekdays of the rounds, 0 = Sunday. */
  readonly rounds: readonly [number, number];
  /** False where the scout does not count other moths. */
  readonly countsOthers: boolean;
}

export interface DemoField {
  readonly id: string;
  readonly farm: string;
  readonly name: string;
  readonly crop: string;
  readonly habit: 'bush' | 'vining' | null;
  /** Month and date of planting, MM-DD; a few days earlier or later in past seasons. */
  readonly sown: string;
  /** Planned first harvest of 2026, MM-DD. */
  readonly harvest: string | null;
  /** Same crop on the same ground each season, and no planting date written: the field's past seasons can be read. */
  readonly everySeason?: true;
  readonly stageUnwritten?: true;
}

export const MILL = { latitude: 45, longitude: -30 } as const;
export const TIME_ZONE = 'Etc/GMT+2';

const MON_THU = [1, 4] as const;
const TUE_FRI = [2, 5] as const;
const WED_SAT = [3, 6] as const;

const farm = (
  name: string,
  code: string,
  [kmEast, kmNorth]: readonly [number, number],
  joined: DemoFarm['joined'],
  rounds: DemoFarm['rounds'],
  countsOthers = true,
): DemoFarm => ({ name, code, kmEast, kmNorth, joined, rounds, countsOthers });

export const FARMS: readonly DemoFarm[] = [
  farm('Quernstead', 'QU', [-0.8, 1.1], 2024, TUE_FRI),
  farm('Larkwater', 'LA', [1.4, 2.6], 2024, TUE_FRI),
  farm('Osierholm', 'OS', [2.3, 0.4], 2024, WED_SAT),
  farm('Dunnoch End', 'DU', [-3.1, 2.2], 2024, TUE_FRI),
  farm('Marlterrace', 'MA', [-4.6, 4.0], 2025, MON_THU, false),
  farm('Fennelgate', 'FE', [0.5, 4.8], 2025, TUE_FRI),
  farm('Cresslow', 'CR', [3.9, 3.3], 2025, WED_SAT),
  farm('Tollyacre', 'TO', [-1.9, -1.7], 2025, TUE_FRI),
  farm('Wetherbank', 'WE', [-5.8, 0.9], 2026, MON_THU, false),
  farm('Ivelow', 'IV', [4.7, -1.2], 2026, WED_SAT),
  farm('Pightle Top', 'PI', [-2.7, 6.4], 2026, MON_THU),
  farm('Yarrowfold', 'YA', [2.0, -3.6], 2026, TUE_FRI, false),
];

type FieldRow = readonly [
  id: string,
  name: string,
  crop: string,
  habit: 'bush' | 'vining' | null,
  sown: string,
  harvest: string | null,
];

const fieldsOf = (farm: string, ...rows: readonly FieldRow[]): DemoField[] =>
  rows.map(([id, name, crop, habit, sown, harvest]) => ({ id, farm, name, crop, habit, sown, harvest }));

const everySeason = (fields: readonly DemoField[]): DemoField[] => fields.map((f) => ({ ...f, everySeason: true }));

export const FIELDS: readonly DemoField[] = [
  ...everySeason(
    fieldsOf(
      'Quernstead',
      ['quernstead-kiln', 'Kiln Strip', 'sweet-corn', null, '05-15', '08-02'],
      ['quernstead-rows', 'Thirteen Rows', 'sweet-corn', null, '06-09', '08-25'],
      ['quernstead-gourd', 'Gourd Bench', 'squash', 'bush', '05-26', '07-21'],
    ),
  ),
  ...everySeason(
    fieldsOf(
      'Larkwater',
      ['larkwater-heron', 'Heron Piece', 'sweet-corn', null, '05-09', '07-18'],
      ['larkwater-weir', 'Weir Flat', 'tomato', null, '05-20', '08-04'],
      ['larkwater-bank', 'Weir Bank', 'pepper', null, '05-24', '08-10'],
    ),
  ),
  ...fieldsOf(
    'Osierholm',
    ['osierholm-withy', 'Withy Plot', 'squash', 'vining', '05-28', '09-01'],
    ['osierholm-end', 'Withy End', 'pumpkin', 'vining', '06-03', '09-20'],
    ['osierholm-causeway', 'Causeway', 'sweet-corn', null, '05-24', '08-11'],
  ),
  ...everySeason(
    fieldsOf(
      'Dunnoch End',
      ['dunnoch-sparrow', 'Sparrow Corner', 'sweet-corn', null, '05-12', '07-31'],
      ['dunnoch-clay', 'Clay Half', 'potato', null, '04-22', '08-20'],
    ),
  ),
  ...fieldsOf(
    'Marlterrace',
    ['marlterrace-top', 'Top Terrace', 'tomato', null, '05-25', '08-08'],
    ['marlterrace-middle', 'Middle Terrace', 'tomato', null, '05-30', '08-14'],
    ['marlterrace-foot', 'Foot Terrace', 'potato', null, '04-28', '08-25'],
  ),
  ...fieldsOf(
    'Fennelgate',
    ['fennelgate-lantern', 'Lantern Field', 'sweet-corn', null, '05-13', '07-31'],
    ['fennelgate-foot', 'Lantern Foot', 'sweet-corn', null, '06-12', '08-28'],
    ['fennelgate-bee', 'Bee Corner', 'squash', 'vining', '05-30', '09-05'],
  ),
  ...fieldsOf(
    'Cresslow',
    ['cresslow-pond', 'Pond Head', 'sweet-corn', null, '05-23', '08-10'],
    ['cresslow-spring', 'Spring Head', 'squash', 'bush', '05-24', '07-20'],
  ),
  ...fieldsOf(
    'Tollyacre',
    ['tollyacre-strip', 'Toll Strip', 'sweet-corn', null, '05-15', '08-02'],
    ['tollyacre-garden', 'Toll Garden', 'tomato', null, '05-22', '08-05'],
  ),
  ...fieldsOf(
    'Wetherbank',
    ['wetherbank-fold', 'Fold Field', 'field-corn', null, '05-03', '10-10'],
    ['wetherbank-ram', 'Ram Piece', 'sweet-corn', null, '05-14', '08-01'],
  ),
  ...fieldsOf(
    'Ivelow',
    ['ivelow-patch', 'Ford Patch', 'pumpkin', 'vining', '06-01', '09-18'],
    ['ivelow-lane', 'Ford Lane', 'sweet-corn', null, '06-05', '08-22'],
    ['ivelow-island', 'Ford Island', 'potato', null, '05-01', '08-28'],
  ),
  ...fieldsOf('Pightle Top', ['pightle-great', 'Great Pightle', 'pumpkin', 'bush', '06-02', '09-15']),
  {
    ...fieldsOf('Pightle Top', ['pightle-little', 'Little Pightle', 'sweet-corn', null, '05-18', null])[0]!,
    stageUnwritten: true,
  },
  ...fieldsOf(
    'Yarrowfold',
    ['yarrowfold-yard', 'Yard Plot', 'pepper', null, '05-30', '08-15'],
    ['yarrowfold-top', 'Top Fold', 'sweet-corn', null, '05-25', '08-12'],
  ),
];
