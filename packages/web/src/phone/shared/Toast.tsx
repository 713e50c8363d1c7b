import { useEffect } from 'react';

export interface ToastMessage {
  readonly text: string;
  readonly action?: { readonly name: string; readonly run: () => void };
}

const STAYS_MS = 10_000;

/** What was just done, and its undoing. The list of stops offers the same for as long as the round lasts. */
export function Toast({ told, forget }: { told: ToastMessage | null; forget: () => void }) {
  useEffect(() => {
    if (!told) return;
    const timer = setTimeout(forget, STAYS_MS);
    return () => clearTimeout(timer);
  }, [told, forget]);
  return (
    <div className="toast" role="status">
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
