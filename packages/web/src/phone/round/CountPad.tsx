import {
  type Change,
  type CountBox,
  type PadKey,
  press,
  typeCount,
  type UnsavedCheck,
} from '../../shared/check/unsaved-check.ts';
import { roundWords as w } from '../../text/round.ts';

const KEYS: readonly PadKey[] = ['1', '2', '3', '4', '5', '6', '7', '8', '9', 'none', '0', 'erase'];

interface Props {
  readonly draft: UnsavedCheck;
  readonly change: Change;
  readonly insect: string;
  /** The insect and the nights that are counted. */
  readonly label: string;
  /** What the last visit found, beside what this one does. */
  readonly last: string;
}

/** Two boxes. They take a keyboard as well as the pad, and never call up the phone's own. */
export function Counts({ draft, insect, label, last, change }: Props) {
  const box = (which: CountBox, name: string, title: string, beside?: string) => (
    <label className={`count${draft.box === which ? ' is-written' : ''}`}>
      <span className="count-name">{name}</span>
      <span className="count-row">
        <input
          inputMode="none"
          autoComplete="off"
          aria-label={title}
          value={draft[which]}
          placeholder={w.trap.emptyCount}
          onFocus={() => change((before) => ({ ...before, box: which }))}
          onChange={(event) => {
            const { value } = event.currentTarget;
            change((before) => typeCount(before, which, value));
          }}
        />
        {beside && <span className="count-last">{beside}</span>}
      </span>
    </label>
  );
  return (
    <div className="counts">
      {box('target', label, insect, last)}
      {box('others', w.trap.others, w.trap.othersLong)}
    </div>
  );
}

/** One pad, for whichever box was tapped last. */
export function Pad({ change }: { readonly change: Change }) {
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
