import { type ComponentProps, lazy, Suspense } from 'react';
import type { OpenEvidence as Evidence } from './OpenEvidence.tsx';

const load = () => import('./OpenEvidence.tsx');
const Loaded = lazy(async () => ({ default: (await load()).OpenEvidence }));

/** The week stands before the script of its evidence has come. */
export const OpenEvidence = (props: ComponentProps<typeof Evidence>) => (
  <Suspense fallback={<div className="open-evidence skeleton-evidence" />}>
    <Loaded {...props} />
  </Suspense>
);

/** Ahead of the first cell that is opened; and so that a phone has it in the field. */
export const loadEvidence = () => void load().catch(() => undefined);
