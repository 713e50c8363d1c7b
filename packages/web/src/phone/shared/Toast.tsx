import { useEffect, useLayoutEffect, useState } from 'react';

export interface ToastMessage {
  readonly text: string;
  readonly action?: { readonly name: string; readonly run: () => void };
}

const STAYS_MS = 10_000;

/** Height of what stands at the foot of the page and must stay in reach, in pixels. */
const footHeight = () =>
  Math.max(
    0,
    ...[...document.querySelectorAll('.round-foot, .bar')].map((foot) => innerHeight - foot.getBoundingClientRect().top),
  );

/** What was just done, and its undoing, above the foot and off the head. The list of stops offers the same for as long as the round lasts. */
export function Toast({ told, forget }: { told: ToastMessage | null; forget: () => void }) {
  useEffect(() => {
    if (!told) return;
    const timer = setTimeout(forget, STAYS_MS);
    return () => clearTimeout(timer);
  }, [told, forget]);
  const [bottom, setBottom] = useState(0);
  useLayoutEffect(() => {
    if (!told) return;
    // The page that comes after what was done has its own foot.
    const look = () => setBottom(Math.min(footHeight(), innerHeight / 2));
    const frame = requestAnimationFrame(look);
    addEventListener('resize', look);
    return () => {
      cancelAnimationFrame(frame);
      removeEventListener('resize', look);
    };
  }, [told]);
  return (
    <div className="toast" role="status" style={{ bottom }}>
      {told && (
        <p>
          <span>{told.text}</span>
          {told.action && (
            <button
              type="button"
              onClick={() => {
                forget();
                told.action!.run();
              }}
            >
              {told.action.name}
            </button>
          )}
        </p>
      )}
    </div>
  );
}
