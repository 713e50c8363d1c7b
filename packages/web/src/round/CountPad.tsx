import { roundWords as w } from '../words/round.ts';
import { type CountBox, type Draft, type PadKey, press, typeCount } from './draft.ts';

const KEYS: readonly PadKey[] = ['1', '2', '3', '4', '5', '6', '7', '8', '9', 'none', '0', 'erase'];

/** Two boxes and one pad for both. The boxes take a keyboard as well, and never call up the phone's own. */
export function CountPad(props: { draft: Draft; insect: string; change: (make: (before: Draft) => Draft) => void }) {
  const { draft, insect, change } = props;
  const box = (which: CountBox, name: string, label: string) => (
    <label className={`count${draft.box === which ? ' is-written' : ''}`}>
      <span>{name}</span>
      <input
        inputMode="none"
        autoComplete="off"
        aria-label={label}
        value={draft[which]}
        placeholder={w.trap.emptyCount}
        onFocus={() => change((before) => ({ ...before, box: which }))}
        onChange={(event) => {
          const { value } = event.currentTarget;
          change((before) => typeCount(before, which, value));
        }}
      />
    </label>
  );
  return (
    <>
      <div className="counts">
        {box('target', insect, insect)}
        {box('others', w.trap.others, w.trap.othersLong)}
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a pad of keys, named as a group; a fieldset would draw a box. */}
      <div className="pad" role="group" aria-label={w.trap.pad}>
        {KEYS.map((key) => (
          <button
            key={key}
            type="button"
            className={key.length > 1 ? 'is-word' : undefined}
            aria-label={key === 'none' ? w.trap.noneLabel : undefined}
            onClick={() => change((before) => press(before, key))}
          >
            {key === 'none' ? w.trap.none : key === 'erase' ? w.trap.erase : key}
          </button>
        ))}
      </div>
    </>
  );
}
