import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { checkOf, fieldOf, programOf, trapOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import { fieldView } from './index.ts';

const program = programOf({
  fields: [fieldOf({ latitude: 45, longitude: -63 })],
  traps: [
    trapOf({ trapId: 'A23', station: 'Oak', hungOn: '2023-07-01', takenDownOn: '2023-09-01' }),
    trapOf({ trapId: 'A24', station: 'Oak', hungOn: '2024-02-20', takenDownOn: '2024-09-01' }),
    trapOf({ trapId: 'B24', station: 'Elm', hungOn: '2024-07-01', takenDownOn: '2024-09-01', design: 'wire-cone' }),
    trapOf({ trapId: 'other', station: 'Ash', hungOn: '2024-07-01', takenDownOn: '2024-09-01', informs: ['F9'] }),
    trapOf({ trapId: 'A25', station: 'Oak', hungOn: '2025-07-01' }),
  ],
  checks: [
    checkOf('2023-07-08', 7, { trapId: 'A23' }),
    checkOf('2023-07-15', null, { trapId: 'A23', condition: 'unfit' }),
    checkOf('2024-02-29', 0, { trapId: 'A24' }),
    checkOf('2024-03-01', 2, { trapId: 'A24' }),
    checkOf('2024-07-11', 30, { trapId: 'B24' }),
    checkOf('2024-07-11', 999, { trapId: 'other' }),
    checkOf('2025-07-08', 14, { trapId: 'A25' }),
  ],
});
const seasonsOn = (on: string) => fieldView(prepare(program, { on: day(on) }), 'F1')!.insects[0]!.earlierSeasons;

describe('the seasons before', () => {
  const seasons = seasonsOn('2025-07-15');

  it('are told apart by year and trap design, and name where their traps stood', () => {
    expect(seasons.map(({ year, design, stations }) => [year, design, stations])).toEqual([
      [2024, 'mesh-cone', ['Oak']],
      [2024, 'wire-cone', ['Elm']],
      [2023, 'mesh-cone', ['Oak']],
    ]);
  });

  it('lie on the same dates of this season, with nights nobody could read left open', () => {
    expect(seasons[2]!.points.map(({ from, to, perNight }) => [from, to, perNight])).toEqual([
      ['2025-07-01', '2025-07-08', 1],
      ['2025-07-08', '2025-07-15', null],
    ]);
    expect(seasons[1]!.points[0]).toMatchObject({ from: '2025-07-01', to: '2025-07-11', perNight: 3 });
  });

  it('drop the night of 29 February in a year that has none, and nothing else', () => {
    expect(seasons[0]!.points.map(({ from, to }) => [from, to])).toEqual([['2025-02-20', '2025-03-01']]);
  });

  it('hold nothing of this season, and nothing that came after the day looked at', () => {
    expect(seasonsOn('2024-03-05').map(({ year }) => year)).toEqual([2023]);
    expect(seasonsOn('2023-12-31')).toEqual([]);
  });
});
