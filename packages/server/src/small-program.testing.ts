import { emptyProgram, type Program, type ProgramSettings } from '@duskwatch/core';
import type { ReadableStore } from './reader.ts';

/** One field of sweet corn in silk, one trap over it, a week of counts above any rule. Invented. */
export function smallProgram(settings: Partial<ProgramSettings> = {}): Program {
  return {
    ...emptyProgram({ name: 'Small', invented: true, pinnedOn: '2026-07-15', ...settings }),
    fields: [
      {
        fieldId: 'north',
        farm: 'Hill farm',
        name: 'North piece',
        crop: 'sweet-corn',
        growthHabit: null,
        plantedOn: '2026-05-10',
        harvestOn: '2026-08-10',
        latitude: 44.9,
        longitude: -63.5,
        timeZone: 'America/Halifax',
        weatherSource: null,
      },
    ],
    stages: [{ fieldId: 'north', observedOn: '2026-07-12', stage: 'silk' }],
    traps: [
      {
        trapId: 'T1',
        station: 'S1',
        insect: 'helicoverpa-zea',
        design: 'mesh-cone',
        latitude: null,
        longitude: null,
        hungOn: '2026-07-01',
        takenDownOn: null,
        informs: ['north'],
      },
    ],
    lures: [{ trapId: 'T1', placedOn: '2026-07-01', lifeDays: 28 }],
    checks: [check('2026-07-08', 14), check('2026-07-14', 30)],
  };
}

const check = (checkedOn: string, targetCount: number): Program['checks'][number] => ({
  trapId: 'T1',
  checkedOn,
  visit: 1,
  targetCount,
  otherCount: 2,
  condition: 'fit',
  emptied: true,
  note: null,
});

/** A store in memory that counts how often it is read and can be written to. */
export function memoryStore(program: Program): ReadableStore & { write(next: Program): void; readings: number } {
  let sequence = 1;
  let held = program;
  return {
    readings: 0,
    write(next) {
      held = next;
      sequence++;
    },
    async loadProgram() {
      this.readings++;
      return held;
    },
    async changesSince(after: number) {
      return after < sequence ? ([{ sequence }] as Awaited<ReturnType<ReadableStore['changesSince']>>) : [];
    },
    history: async () => [],
    async counts() {
      return { lastSequence: sequence } as Awaited<ReturnType<ReadableStore['counts']>>;
    },
  };
}
