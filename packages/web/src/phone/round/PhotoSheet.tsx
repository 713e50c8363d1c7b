import { useEffect, useId, useRef, useState } from 'react';
import { downscale, drawInto } from '../../browser/photo.ts';
import type { Change, UnsavedCheck } from '../../shared/check/unsaved-check.ts';
import { roundWords as w } from '../../text/round.ts';
import type { RoundDevice } from '../shared/device.ts';
import { whole } from '../shared/figures.ts';
import { Sheet } from '../shared/Sheet.tsx';

interface Props {
  readonly draft: UnsavedCheck;
  readonly device: RoundDevice;
  readonly change: Change;
  /** At once, without a tap on its button. */
  readonly open: boolean;
}

export function PhotoSheet({ draft, device, change, open }: Props) {
  const id = useId();
  const [working, setWorking] = useState<'no' | 'yes' | 'failed'>('no');
  const take = async (file: File | undefined) => {
    if (!file) return;
    setWorking('yes');
    const photo = await downscale(file);
    setWorking(photo ? 'no' : 'failed');
    if (photo) change((before) => ({ ...before, photo }));
  };
  return (
    <Sheet
      name={w.photo.button}
      {...(draft.photo && { state: w.photo.taken })}
      marked={draft.photo !== null}
      title={w.photo.title}
      open={open}
    >
      {draft.photo && <Taken photo={draft.photo} device={device} />}
      <p className="hint" role="status">
        {working === 'yes' ? w.photo.working : working === 'failed' ? w.photo.failed : draft.photo ? w.photo.kept : ''}
      </p>
      <label htmlFor={id} className="big file">
        {draft.photo ? w.photo.again : w.photo.take}
      </label>
      <input
        id={id}
        className="unseen"
        type="file"
        accept="image/*"
        capture="environment"
        onChange={(event) => void take(event.currentTarget.files?.[0])}
      />
      {draft.photo && (
        <button type="button" className="big" onClick={() => change((before) => ({ ...before, photo: null }))}>
          {w.photo.remove}
        </button>
      )}
    </Sheet>
  );
}

function Taken({ photo, device }: { photo: Blob | string; device: RoundDevice }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [facts, setFacts] = useState<string | null>(null);
  useEffect(() => {
    let gone = false;
    void (async () => {
      const blob = photo instanceof Blob ? photo : await device.photo(photo);
      const size = blob && !gone && canvas.current ? await drawInto(canvas.current, blob) : null;
      if (size && !gone) setFacts(w.photo.size(whole(Math.ceil(blob!.size / 1000)), `${size.width} × ${size.height}`));
    })();
    return () => {
      gone = true;
    };
  }, [photo, device]);
  return (
    <figure className="taken">
      <canvas ref={canvas} role="img" aria-label={w.photo.alt} />
      {facts && <figcaption>{facts}</figcaption>}
    </figure>
  );
}
