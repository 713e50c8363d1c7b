import type { WeekCell } from '@duskwatch/core';

/** The insect does not live on this crop: there is nothing to say and nothing to open. */
export const isNoHost = ({ advice: { verb, reason } }: WeekCell): boolean =>
  verb === 'none' && reason?.kind === 'out-of-season' && reason.why === 'not-a-host';
