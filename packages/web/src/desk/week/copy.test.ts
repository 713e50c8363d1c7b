import { english } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { week } from '../../shared/advice/week.fixture.ts';
import { weekAsCsv, weekAsText } from './copy.ts';
import { selectWeek } from './select.ts';

test('the CSV holds plain numbers, ISO days and quoted commas, and leaves out what is out of season', () => {
  const lines = weekAsCsv(selectWeek(week, { crop: 'sweet-corn' })).split('\r\n');
  expect(lines).toEqual([
    'farm,field,crop,insect,verb,by,moths per trap per night,low,high,confidence',
    '"Hollin, north",Strip 9,sweet-corn,Helicoverpa zea,decide,2025-07-14,3.1,1.55,6.2,moderate',
    '"Hollin, north",Strip 9,sweet-corn,Ostrinia nubilalis,blind,,,,,',
    '"Hollin, north",Strip 10,sweet-corn,Helicoverpa zea,watch,2025-07-15,0.6,0.3,1.2,moderate',
  ]);
});

test('the text says that a demo is invented, and what each field needs', () => {
  const lines = weekAsText(week, selectWeek(week, { farm: 'Brook' }), english({ temperature: 'F' })).split('\n');
  expect(lines).toEqual([
    'Small, invented (invented demo), Saturday 12 July 2025',
    'Brook, Acre: corn earworm: Decide by Sun 13 July; 1.4 a night (0.7–2.8)',
    'Brook, Acre: European corn borer: Scout by Sun 13 July',
  ]);
});
