import { expect, it } from 'vitest';
import { clockText, daysFrom, homeOf, minuteOf } from './setup.ts';

it('a start point is two numbers, nothing, or a fault', () => {
  expect(homeOf('44.91, -63.50')).toEqual({ latitude: 44.91, longitude: -63.5 });
  expect(homeOf('44.91 -63.50')).toEqual({ latitude: 44.91, longitude: -63.5 });
  expect(homeOf(' ')).toBeNull();
  for (const wrong of ['home', '95, 10', '44.9', '44.9, 200', '1, 2, 3']) expect(homeOf(wrong), wrong).toBeUndefined();
});

it('clock times go both ways, and days across a month’s end', () => {
  expect([minuteOf('08:30'), clockText(510), clockText(minuteOf('00:05')), clockText(1_505)]).toEqual([
    510,
    '08:30',
    '00:05',
    '25:05',
  ]);
  expect(daysFrom('2028-02-28', 3)).toEqual(['2028-02-28', '2028-02-29', '2028-03-01']);
});
