import { type IsoDay, parseDay } from '@duskwatch/core';
import { shiftDay } from '../format/day.ts';
import { words } from '../text/index.ts';

/** The day the page is read on. `pinned` false: the newest day there is, whatever it is tomorrow. */
export function DateControl(props: { on: IsoDay; pinned: boolean; choose: (on: IsoDay | undefined) => void }) {
  const { on, choose } = props;
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
      {props.pinned && (
        <button type="button" className="newest" onClick={() => choose(undefined)}>
          {words.date.newest}
        </button>
      )}
    </div>
  );
}
