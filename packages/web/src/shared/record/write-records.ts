/** Writes and says so: the toast with its undo, and the pages read anew. */
import { useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { recordWords } from '../../text/record.ts';
import { toast } from '../../ui/toast.ts';
import { type Change, type Written, write } from './desk.ts';
import { problemText } from './ProblemText.tsx';

/** Everything on a screen rests on records. */
const RESTS_ON_RECORDS = [
  'week',
  'field',
  'flights',
  'field-flights',
  'traps',
  'trap',
  'records',
  'history',
  'conflicts',
  'program',
  'season',
  'season-truth',
  'counts',
  'weather-sources',
  'weather-fetching',
  'first-steps',
];
/** These too, and they take the server long: nobody waits for them. */
const LONG_SUMS = ['review', 'questions'];

/** Resolves to whether the changes are kept; false when the server or the browser refused them. */
export type WriteRecords = (text: string, ...changes: readonly Change[]) => Promise<boolean>;

export function useWriteRecords(): WriteRecords {
  const w = recordWords.toast;
  const queries = useQueryClient();
  const navigate = useNavigate();
  const readAnew = () => {
    const among = (names: readonly string[]) =>
      queries.invalidateQueries({ predicate: ({ queryKey }) => names.includes(String(queryKey[0])) });
    void among(LONG_SUMS);
    return among(RESTS_ON_RECORDS);
  };

  const told = async (text: string, written: Written, undoable: boolean): Promise<boolean> => {
    if (written.outcome === 'refused') {
      const why = written.problems.map(problemText).join(' ');
      const see = { label: w.seeRefused, act: () => void navigate({ to: '/conflicts' }) };
      toast(w.refused(why), { action: see, lasting: true });
      return false;
    }
    const kept = written.outcome === 'kept' ? `${text} ${w.offline}` : text;
    const undo = async () => {
      try {
        await told(w.undone, await written.undo(), false);
      } catch {
        toast(w.notKept, { lasting: true });
      }
      await readAnew();
    };
    toast(kept, { action: undoable ? { label: w.undo, act: () => void undo() } : null });
    return true;
  };

  return async (text, ...changes) => {
    let done = false;
    try {
      done = await told(text, await write(...changes), true);
    } catch {
      toast(w.notKept, { lasting: true });
    }
    await readAnew();
    return done;
  };
}
