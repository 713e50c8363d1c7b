import { roundWords as w } from '../../text/round.ts';
import { type CountBox, type PadKey, press, typeCount, type UnsavedCheck } from '../shared/unsaved-check.ts';

const KEYS: readonly PadKey[] = ['1', '2', '3', '4', '5', '6', '7', '8', '9', 'none', '0', 'erase'];

interface Props {
  readonly draft: UnsavedCheck;
  readonly insect: string;
  readonly change: (make: (before: UnsavedCheck) => UnsavedCheck) => void;
}

/** Two boxes. They take a keyboard as well as the pad, and never call up the phone's own. */
export function Counts({ draft, insect, change }: Props) {
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
    <div className="counts">
      {box('target', insect, insect)}
      {box('others', w.trap.others, w.trap.othersLong)}
    </div>
  );
}

/** One pad, for whichever box was tapped last. */
export function Pad({ change }: Pick<Props, 'change'>) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a pad of keys, named as a group; a fieldset would draw a box.
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
  );
}
