import { plannedRoundsWords as w } from '../../text/planned-rounds.ts';
import { homeOf, MOST_DAYS, newScout, type ScoutSetup, type Setup } from './setup.ts';

/** Who drives, from where, how long, on how many days. */
export function SetupForm({ setup, change }: { setup: Setup; change: (setup: Setup) => void }) {
  const changeScout = (index: number, part: Partial<ScoutSetup>) =>
    change({ ...setup, scouts: setup.scouts.map((scout, at) => (at === index ? { ...scout, ...part } : scout)) });
  return (
    <section className="rounds-setup" aria-labelledby="rounds-setup">
      <h2 id="rounds-setup">{w.setup}</h2>
      <label className="rounds-days">
        <span>{w.days}</span>
        <select value={setup.days} onChange={(event) => change({ ...setup, days: Number(event.currentTarget.value) })}>
          {Array.from({ length: MOST_DAYS }, (_, n) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the numbers are the keys
            <option key={n}>{n + 1}</option>
          ))}
        </select>
      </label>
      {setup.scouts.map((scout, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a scout has no other name while it is typed
        <fieldset key={index} className="rounds-scout">
          <legend>{w.scout(index + 1)}</legend>
          <label>
            <span>{w.name}</span>
            <input
              type="text"
              value={scout.name}
              maxLength={80}
              onChange={(event) => changeScout(index, { name: event.currentTarget.value })}
            />
          </label>
          <label>
            <span>{w.start}</span>
            <input
              type="time"
              value={scout.start}
              onChange={(event) => changeScout(index, { start: event.currentTarget.value })}
            />
          </label>
          <label>
            <span>{w.hours}</span>
            <input
              type="number"
              min={0.5}
              max={16}
              step={0.5}
              value={scout.hours || ''}
              onChange={(event) => changeScout(index, { hours: event.currentTarget.valueAsNumber || 0 })}
            />
          </label>
          <label className="wide">
            <span>{w.home}</span>
            <input
              type="text"
              value={scout.home}
              inputMode="text"
              aria-invalid={homeOf(scout.home) === undefined}
              onChange={(event) => changeScout(index, { home: event.currentTarget.value })}
            />
            <small>{homeOf(scout.home) === undefined ? w.homeWrong : w.homeNote}</small>
          </label>
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
