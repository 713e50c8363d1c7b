import { mapWords as w } from '../../text/map.ts';

export function Controls({ nearer, farther, all }: { nearer: () => void; farther: () => void; all: () => void }) {
  return (
    <div className="ground-controls">
      <button type="button" onClick={nearer} aria-label={w.zoomIn}>
        +
      </button>
      <button type="button" onClick={farther} aria-label={w.zoomOut}>
        −
      </button>
      <button type="button" onClick={all}>
        {w.fit}
      </button>
    </div>
  );
}
