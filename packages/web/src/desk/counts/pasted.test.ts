import { describe, expect, it } from 'vitest';
import { readPasted } from './pasted.ts';

const TRAPS = ['A1', 'A2', 'B1', 'B2'];
const counts = (text: string, from = 'A1') => {
  const read = readPasted(text, TRAPS, from);
  return 'counts' in read ? Object.fromEntries(read.counts) : read.faults;
};

describe('counts pasted from a spreadsheet', () => {
  it('fill a column from the box they were pasted into, and leave an empty cell not counted', () => {
    expect(counts('3\n0\n\n12\n')).toEqual({ A1: '3', A2: '0', B1: '', B2: '12' });
    expect(counts('7\r\n8\r\n', 'B1')).toEqual({ B1: '7', B2: '8' });
  });

  it('go to the trap that their line names, in whatever order and case, past what stands between and over a heading', () => {
    expect(counts('trap\tinsect\tcount\nb2\tmoth\t4\nA1\tmoth\t0')).toEqual({ B2: '4', A1: '0' });
  });

  it('are refused as a whole, with every line that cannot be read', () => {
    expect(counts('3\nabout 12\n4,5\n-1')).toEqual([
      { kind: 'no-count', line: 2, got: 'about 12' },
      { kind: 'no-count', line: 3, got: '4,5' },
      { kind: 'no-count', line: 4, got: '-1' },
    ]);
    expect(counts('A1\t3\nC9\t4\nA1\t5')).toEqual([
      { kind: 'no-trap', line: 2, got: 'C9' },
      { kind: 'twice', line: 3, got: 'A1' },
    ]);
    expect(counts('1\n2\n3', 'B1')).toEqual([{ kind: 'too-long', lines: 3, room: 2 }]);
    expect(counts('1\t2\n3\t4')).toEqual([
      { kind: 'no-count', line: 1, got: '1 2' },
      { kind: 'no-count', line: 2, got: '3 4' },
    ]);
    expect(counts('1234567')).toEqual([{ kind: 'no-count', line: 1, got: '1234567' }]);
  });
});
