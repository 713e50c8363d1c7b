import fc from 'fast-check';
import { expect, test } from 'vitest';
import { week } from '../../shared/advice/week.fixture.ts';
import { chunksOf, PORTIONS } from './chunks.ts';

const field = week.fields[0]!;
const groups = (sizes: readonly number[]) =>
  sizes.map((size, group) => ({
    title: `farm ${group}`,
    folded: [],
    fields: Array.from({ length: size }, (_, index) => ({ ...field, fieldId: `${group}-${index}` })),
  }));

test('every field is in one chunk, in its order, and each farm is named once', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 20 }), (sizes) => {
      const chunks = chunksOf(groups(sizes), PORTIONS.narrow);
      expect(chunks.flatMap((chunk) => chunk.fields)).toEqual(groups(sizes).flatMap((group) => group.fields));
      expect(chunks.flatMap(({ title }) => title ?? [])).toEqual(groups(sizes).map(({ title }) => title));
      expect(new Set(chunks.map(({ key }) => key)).size).toBe(chunks.length);
    }),
  );
});

test('a county is drawn at once; of a state only what is near the window', () => {
  expect(chunksOf(groups([30, 30]), PORTIONS.wide).every(({ always }) => always)).toBe(true);
  const state = chunksOf(groups(Array(50).fill(10)), PORTIONS.wide);
  expect(state.filter(({ always }) => always).flatMap(({ fields }) => fields)).toHaveLength(5);
});

test('what is folded stands in a line after its group, and among its fields once it is asked for', () => {
  const [one] = groups([2]);
  const quiet = { ...field, fieldId: 'quiet' };
  const folded = chunksOf([{ ...one!, folded: [quiet] }], PORTIONS.wide);
  expect(folded.map(({ fields, fold }) => [fields.length, fold?.fields.length ?? 0])).toEqual([
    [1, 0],
    [1, 1],
  ]);
  const open = chunksOf([{ ...one!, folded: [quiet] }], PORTIONS.wide, new Set(['farm 0']));
  expect(open.flatMap(({ fields }) => fields).map(({ fieldId }) => fieldId)).toEqual(['0-0', '0-1', 'quiet']);
  expect(open.at(-1)!.fold).toMatchObject({ open: true });
});

test('a farm that needs nothing at all is one line', () => {
  const chunks = chunksOf([{ title: 'quiet farm', fields: [], folded: [field] }], PORTIONS.wide);
  expect(chunks).toMatchObject([{ title: 'quiet farm', fields: [], fold: { group: 'quiet farm', open: false } }]);
});
