import { plannedRoundsWords as w } from '../../text/planned-rounds.ts';
import { Field } from '../../ui/Field.tsx';
import { homeOf, MOST_DAYS, newScout, type ScoutSetup, type Setup } from './setup.ts';

/** Who drives, from where, how long, on how many days. */
export function SetupForm({ setup, change }: { setup: Setup; change: (setup: Setup) => void }) {
  const changeScout = (index: number, part: Partial<ScoutSetup>) =>
    change({ ...setup, scouts: setup.scouts.map((scout, at) => (at === index ? { ...scout, ...part } : scout)) });
  return (
    <section className="rounds-setup" aria-labelledby="rounds-setup">
      <h2 id="rounds-setup">{w.setup}</h2>
      <Field label={w.days} className="rounds-days">
        {(box) => (
          <select {...box} value={setup.days} onChange={(event) => change({ ...setup, days: Number(event.currentTarget.value) })}>
            {Array.from({ length: MOST_DAYS }, (_, n) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the numbers are the keys
              <option key={n}>{n + 1}</option>
            ))}
          </select>
        )}
      </Field>
      {setup.scouts.map((scout, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a scout has no other name while it is typed
        <fieldset key={index} className="rounds-scout">
          <legend>{w.scout(index + 1)}</legend>
          <Field label={w.name} className="name">
            {(box) => (
              <input
                {...box}
                type="text"
                value={scout.name}
                maxLength={80}
                onChange={(event) => changeScout(index, { name: event.currentTarget.value })}
              />
            )}
          </Field>
          <Field label={w.start}>
            {(box) => (
              <input
                {...box}
                type="time"
                value={scout.start}
                onChange={(event) => changeScout(index, { start: event.currentTarget.value })}
              />
            )}
          </Field>
          <Field label={w.hours}>
            {(box) => (
              <input
                {...box}
                type="number"
                min={0.5}
                max={16}
                step={0.5}
                value={scout.hours || ''}
                onChange={(event) => changeScout(index, { hours: event.currentTarget.valueAsNumber || 0 })}
              />
            )}
          </Field>
          <Field label={w.home} className="wide" hint={w.homeNote} faults={homeOf(scout.home) === undefined ? [w.homeWrong] : []}>
            {(box) => (
              <input
                {...box}
                type="text"
                value={scout.home}
                inputMode="text"
                onChange={(event) => changeScout(index, { home: event.currentTarget.value })}
              />
            )}
          </Field>
          {setup.scouts.length > 1 && (
            <button
              type="button"
              className="plain-button"
              onClick={() => change({ ...setup, scouts: setup.scouts.filter((_, at) => at !== index) })}
            >
              {w.remove}
            </button>
          )}
        </fieldset>
      ))}
      <p className="actions">
        <button
          type="button"
          className="button"
          onClick={() => change({ ...setup, scouts: [...setup.scouts, newScout(w.scout(setup.scouts.length + 1))] })}
        >
          {w.add}
        </button>
      </p>
      <p className="key">{w.setupNote}</p>
    </section>
  );
}
