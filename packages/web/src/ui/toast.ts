/** Words about what was just done, with the way back. */
import { useSyncExternalStore } from 'react';

interface ToastAction {
  readonly label: string;
  readonly act: () => void;
}

export interface Toast {
  readonly id: number;
  readonly text: string;
  readonly action: ToastAction | null;
  /** Stays until it is dismissed. */
  readonly lasting: boolean;
}

let toasts: readonly Toast[] = [];
let last = 0;
const listeners = new Set<() => void>();

function set(next: readonly Toast[]): void {
  toasts = next;
  for (const tell of listeners) tell();
}

/** Says something in place of what was said before; what lasts stays. */
export function toast(text: string, { action = null, lasting = false }: Partial<Pick<Toast, 'action' | 'lasting'>> = {}): void {
  last += 1;
  set([...toasts.filter((each) => each.lasting), { id: last, text, action, lasting }]);
}

export const dismiss = (id: number): void => set(toasts.filter((each) => each.id !== id));

export const useToasts = (): readonly Toast[] =>
  useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    () => toasts,
  );
