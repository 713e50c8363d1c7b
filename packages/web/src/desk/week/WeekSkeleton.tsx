/** The page's shape while it is being read, so that nothing jumps when it arrives. */
export function WeekSkeleton() {
  return (
    <div className="skeleton" aria-hidden="true">
      <div className="skeleton-due" />
      <div className="skeleton-tools" />
      {Array.from({ length: 8 }, (_, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: eight alike
        <div className="skeleton-row" key={row} />
      ))}
    </div>
  );
}
