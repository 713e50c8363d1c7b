import { expect, test } from 'vitest';
import { scaleBarIn } from './scale-bar.ts';

test('a scale bar is a round length in the unit of the reader, as long as it says', () => {
  expect(scaleBarIn('m', 13.7, 120)).toEqual({ text: '1 km', pixels: 1000 / 13.7 });
  const miles = scaleBarIn('ft', 100, 120);
  expect(miles.text).toBe('5 mi');
  expect(miles.pixels).toBeCloseTo((5 * 1609.344) / 100, 9);
  const feet = scaleBarIn('ft', 1, 120);
  expect(feet.text).toBe('200 ft');
  expect(feet.pixels).toBeCloseTo(200 * 0.3048, 9);
});
