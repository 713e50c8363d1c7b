import { reviewWords as w } from '../../text/review.ts';

/** While a long sum is under way: what is being done, and the room its result will take. */
export const Working = () => (
  <div aria-busy="true">
    <p className="lead" role="status">
      {w.working}
    </p>
    <div className="skeleton skeleton-field" aria-hidden="true" />
  </div>
);

/** Why something is not known, and how far the data are from telling. */
export function NotYet({ why, figures }: { why: string; figures: { readonly have: number; readonly need: number } | null }) {
  return (
    <p className="not-yet">
      <strong>{w.notYet}.</strong> {why} {figures && w.have(figures.have, figures.need)}
    </p>
  );
}
