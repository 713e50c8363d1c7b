import { queryOptions, useMutation, useQuery } from '@tanstack/react-query';
import { getJson, send } from '../api/client.ts';
import { otherProgramWords as w } from '../text/other-program.ts';

type Kind = 'own' | 'demo';

/** Which other program the server can open; null: none. */
const otherProgramQuery = queryOptions({
  queryKey: ['other-program'],
  queryFn: ({ signal }) => getJson<{ readonly kind: Kind | null }>('/api/other-program', signal),
  staleTime: Number.POSITIVE_INFINITY,
});

export const useOtherProgram = (): Kind | null => useQuery(otherProgramQuery).data?.kind ?? null;

/**
 * Goes over to the other program, which is at an address of its own: what this browser keeps of one is never seen by the
 * other.
 * @param begin said of where one begins, not of where one goes back to
 */
export function OtherProgramButton({
  kind,
  begin = false,
  className = 'button',
}: {
  kind: Kind;
  begin?: boolean;
  className?: string;
}) {
  const { mutate, isPending, isSuccess, isError } = useMutation({
    mutationFn: () => send<{ readonly port: number }>('POST', '/api/other-program'),
    onSuccess: ({ port }) => window.location.assign(`http://${window.location.hostname}:${port}/`),
  });
  const busy = isPending || isSuccess;
  return (
    <>
      <button type="button" className={className} aria-disabled={busy} onClick={() => busy || mutate()}>
        {begin ? w.go[kind] : w.to[kind]}
      </button>
      {busy && <span role="status"> {w.opening[kind]}</span>}
      {isError && <span role="alert"> {w.failed}</span>}
    </>
  );
}

/** In the demo, the way to a program of one's own. */
export function BeginOwn() {
  return (
    useOtherProgram() === 'own' && (
      <p className="actions no-print" title={w.text.own}>
        <OtherProgramButton kind="own" begin />
      </p>
    )
  );
}
