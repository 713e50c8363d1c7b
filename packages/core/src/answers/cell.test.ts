import { expect, it } from 'vitest';
import type { Advice } from '../advice/index.ts';
import { cellReason, trapsBehind } from './cell.ts';

const advice = (verb: Advice['verb'], because: Advice['because']): Advice => ({
  field: 'F1',
  insect: 'helicoverpa-zea',
  verb,
  by: null,
  dueSince: null,
  rate: null,
  interval: null,
  intervalDays: null,
  probabilityAbove: null,
  because,
  cautions: [],
  confidence: null,
  rule: null,
  source: null,
});

const noStage = { kind: 'missing', what: 'stage', from: null, to: null, detail: null } as const;
const unfit = { kind: 'trap-unusable', trapId: 'T2', design: 'mesh-cone', why: 'unfit', since: '2025-07-09', nights: 3 } as const;
const spent = { kind: 'lure-spent', trapId: 'T3', ageDays: 40, lifeDays: 28 } as const;

it('a blind cell names what leads its evidence when something is missing, and else the trap that nobody can read', () => {
  expect(cellReason(advice('blind', [noStage, unfit]))).toEqual({ kind: 'missing', what: 'stage' });
  expect(cellReason(advice('blind', [spent, unfit, noStage]))).toEqual({ kind: 'trap-unusable', why: 'unfit' });
  expect(cellReason(advice('blind', [spent]))).toEqual({ kind: 'lure-spent' });
});

it('a cell with a verb that has a date needs no reason, and one out of season always has one', () => {
  expect(cellReason(advice('watch', [unfit]))).toBeNull();
  expect(cellReason(advice('none', []))).toEqual({ kind: 'out-of-season', why: 'stage' });
});

it('the traps behind an advice are those that its evidence names', () => {
  expect(trapsBehind(advice('blind', [noStage, unfit, spent]))).toEqual(['T2', 'T3']);
});
