import { describe, expect, it } from 'vitest';
import { readTravelTable } from './travel-table.ts';

describe('a table of driving times', () => {
  it('is read by row and column, with commas, or with semicolons and decimal commas', () => {
    const value = {
      ids: ['Ana', 'S, 1', 'S2'],
      minutes: [
        [0, 5, 12.5],
        [6, 0, 3],
        [12, 3, 0],
      ],
    };
    const commas = '\uFEFF,Ana,"S, 1",S2\r\nAna,0,5,12.5\r\n"S, 1",6,,3\r\nS2,12,3,0\r\n';
    expect(readTravelTable(commas)).toEqual({ ok: true, value });
    const semicolons = ';Ana;S, 1;S2\nAna;0;5;12,5\nS, 1;6;0;3\n\nS2;12;3;0';
    expect(readTravelTable(semicolons)).toEqual({ ok: true, value });
  });

  it('says where it is wrong', () => {
    const faults = (text: string) => {
      const read = readTravelTable(text);
      return read.ok ? [] : read.problems.map(({ where, got }) => [where.row, where.column, got]);
    };
    expect(faults('')).toEqual([[1, undefined, '']]);
    expect(faults(',A,B\nA,0,soon\nB,-1,0')).toEqual([
      [2, 'B', 'soon'],
      [3, 'A', '-1'],
    ]);
    expect(faults(',A,B\nA,0,\nB,1,0')).toEqual([[2, 'B', '']]);
    expect(faults(',A,A\nA,0,1\nA,1,0')[0]).toEqual([1, 'A', 'A']);
    expect(faults(',A,B\nB,0,1\nA,1,0')[0]).toEqual([2, undefined, 'B']);
    expect(faults(',A,B\nA,0,1')).toContainEqual([2, undefined, '1 rows']);
  });
});
