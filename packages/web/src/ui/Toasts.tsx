import { useEffect, useState } from 'react';
import { recordWords } from '../text/record.ts';
import { dismiss, type Toast, useToasts } from './toast.ts';

/** Long enough to read and to reach; the way back stays in the history for ever. */
const SHOWN_MS = 15_000;

export function Toasts() {
  const toasts = useToasts();
  return (
    <section className="toasts" aria-label={recordWords.toast.label}>
      <div role="status">
        {toasts.map((toast) => (
          <ToastLine key={toast.id} toast={toast} />
        ))}
      </div>
    </section>
  );
}

function ToastLine({ toast }: { toast: Toast }) {
  const w = recordWords.toast;
  const [held, hold] = useState(false);
  useEffect(() => {
    if (toast.lasting || held) return;
    const timer = setTimeout(() => dismiss(toast.id), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [toast, held]);
  return (
    // Whoever reads or reaches for it keeps it: pointer and focus stop the clock.
    // biome-ignore lint/a11y/noStaticElementInteractions: the line itself offers nothing to press
    <div
      className="desk-toast"
      onPointerEnter={() => hold(true)}
      onPointerLeave={() => hold(false)}
      onFocus={() => hold(true)}
      onBlur={() => hold(false)}
    >
      <span>{toast.text}</span>
      {toast.action && (
        <button
          type="button"
          onClick={() => {
            dismiss(toast.id);
            toast.action!.act();
          }}
        >
          {toast.action.label}
        </button>
      )}
      <button type="button" className="toast-dismiss" aria-label={w.dismiss} onClick={() => dismiss(toast.id)}>
        ×
      </button>
    </div>
  );
}
