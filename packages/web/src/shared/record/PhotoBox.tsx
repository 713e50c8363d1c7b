import { useEffect, useRef, useState } from 'react';
import { downscale, drawInto } from '../../browser/photo.ts';
import { recordWords } from '../../text/record.ts';
import type { BoxProps } from '../../ui/Field.tsx';
import { desk } from './desk.ts';

const w = recordWords.photo;

/** A photo, from the camera or from a file: made small, kept at once, and named by its bytes. */
export function PhotoBox({ shared, name, write }: { shared: BoxProps; name: string; write: (name: string) => void }) {
  const [state, setState] = useState<'rest' | 'working' | 'failed'>('rest');
  const [seen, setSeen] = useState<Blob | null>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const take = async (file: File | undefined) => {
    if (!file) return;
    setState('working');
    const photo = await downscale(file);
    if (photo) {
      write(await (await desk()).putPhoto(photo));
      setSeen(photo);
    }
    setState(photo ? 'rest' : 'failed');
  };
  useEffect(() => {
    if (seen && canvas.current) void drawInto(canvas.current, seen);
  }, [seen]);
  const file = (label: string, camera: boolean) => (
    <label className="button file-button">
      {label}
      <input
        className="unseen"
        type="file"
        accept="image/*"
        {...(camera ? { capture: 'environment', id: shared.id } : {})}
        onChange={(event) => void take(event.currentTarget.files?.[0])}
      />
    </label>
  );
  return (
    <div className="photo-box">
      <p className="actions">
        {file(w.take, true)}
        {file(w.choose, false)}
        {name !== '' && (
          <button
            type="button"
            className="plain-button"
            onClick={() => {
              setSeen(null);
              write('');
            }}
          >
            {w.remove}
          </button>
        )}
      </p>
      <p className="hint" role="status">
        {state === 'working' ? w.working : state === 'failed' ? w.failed : name === '' ? '' : w.kept}
      </p>
      {seen && name !== '' && <canvas ref={canvas} role="img" aria-label={w.alt} />}
    </div>
  );
}
