import type { StationTrap } from '@duskwatch/core';

/** A check or a lure asks for somebody. */
export const isDue = ({ check, lure, state }: StationTrap): boolean =>
  (check !== null && check.state !== 'not-due') || (state === 'hanging' && lure?.spent === true);
