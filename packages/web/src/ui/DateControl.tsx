import { type IsoDay, parseDay } from '@duskwatch/core';
import { shiftDay } from '../format/day.ts';
import { words } from '../text/index.ts';

/** A day, and the ways to those around it and to any other. */
export function DateControl({ on, choose }: { on: IsoDay; choose: (on: IsoDay) => void }) {
  return (
    <div className="date-control">
      <button type="button" onClick={() => choose(shiftDay(on, -1))} aria-label={words.date.before}>
        ‹
      </button>
      <input
        type="date"
        aria-label={words.date.label}
        value={on}
        // Half-typed dates come as '' or as year 0002; only whole ones of this age are taken.
        onChange={(event) => {
          const value = event.currentTarget.value;
          if (parseDay(value) !== null && value >= '1900') choose(value);
        }}
      />
      <button type="button" onClick={() => choose(shiftDay(on, 1))} aria-label={words.date.after}>
        ›
      </button>
    </div>
  );
}
