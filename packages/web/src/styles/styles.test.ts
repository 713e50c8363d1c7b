/** What every file of style keeps to. */
import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const SRC = fileURLToPath(new URL('..', import.meta.url));
const files = Object.keys(import.meta.glob('../**/*.css')).map((path) => join(dirname(fileURLToPath(import.meta.url)), path));
const INDEXES = ['styles/index.css', 'desk/desk.css', 'phone/shared/index.css'].map((path) => join(SRC, path));
const textOf = (path: string) => readFileSync(path, 'utf8').replaceAll(/\/\*[\s\S]*?\*\//g, '');
const all = (pattern: RegExp) =>
  files.flatMap((path) => [...textOf(path).matchAll(pattern)].map((match) => `${relative(SRC, path)}: ${match[1]}`));

test('every file stands in a layer, so that the order of files decides nothing between a part and a page', () => {
  const imports = INDEXES.flatMap((index) =>
    [...textOf(index).matchAll(/@import "([^"]+)"( layer\((?:tokens|base|ui|page|page\.shared|print)\))?;/g)].map(
      ([line, path, layer]) => ({ line, path: join(dirname(index), path!), layer }),
    ),
  );
  expect(imports.filter(({ layer }) => !layer).map(({ line }) => line)).toEqual([]);
  const taken = imports.map(({ path }) => path);
  expect(new Set(taken).size).toBe(taken.length);
  expect([...taken].sort()).toEqual(files.filter((path) => !INDEXES.includes(path)).sort());
  for (const index of INDEXES)
    expect(
      textOf(index)
        .replaceAll(/@(import|layer) [^;]+;/g, '')
        .trim(),
    ).toBe('');
});

test('letters come in six sizes, which grow with what the reader chose in the browser', () => {
  expect(all(/(--text-\w+: [^;]+);/g).filter((line) => line.startsWith('styles/tokens'))).toHaveLength(6);
  expect(all(/--text-\w+: ([^;]+);/g).filter((line) => !/: [\d.]+rem$/.test(line))).toEqual([]);
  const sizes = all(/font(?:-size)?:([^;]+);/g).filter((line) => /\d(px|r?em|pt)\b/.test(line));
  expect(sizes).toEqual([]);
});

test('pages break at three sizes of the window and no other', () => {
  const allowed = new Set(['(max-width: 700px)', '(max-width: 899px)', '(max-height: 480px)']);
  const asked = all(/@media ([^{]+) \{/g).flatMap((line) =>
    [...line.matchAll(/\([^)]*(?:width|height)[^)]*\)/g)].map(([size]) => size),
  );
  expect(asked.length).toBeGreaterThan(10);
  expect([...new Set(asked)].filter((size) => !allowed.has(size))).toEqual([]);
});
