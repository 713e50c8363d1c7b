/** What the browser tests share: a page that must keep its console clean, and the API's own answers to hold it to. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type APIRequestContext, test as base, expect, type Page } from '@playwright/test';
import type { FieldView, WeekView } from '../packages/core/src/index.ts';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** Every test fails on an error or warning in the console, and on an exception in the page, unless it may complain. */
export const test = base.extend<{ mayComplain: boolean; cleanConsole: undefined }>({
  mayComplain: [false, { option: true }],
  cleanConsole: [
    async ({ page, mayComplain }, use) => {
      const said: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') said.push(message.text());
      });
      page.on('pageerror', (error) => said.push(error.message));
      await use(undefined);
      if (!mayComplain) expect(said).toEqual([]);
    },
    { auto: true },
  ],
});

export async function weekOf(request: APIRequestContext, on?: string): Promise<WeekView> {
  return (await request.get(on ? `/api/week?on=${on}` : '/api/week')).json();
}

export async function fieldOf(request: APIRequestContext, fieldId: string): Promise<FieldView> {
  return (await request.get(`/api/fields/${encodeURIComponent(fieldId)}`)).json();
}

interface AxeRun {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
  }[];
}

/** What axe finds against WCAG 2.2 A and AA within an element, ready to read in a failed test; of colours alone, if asked. */
export async function accessibilityProblems(page: Page, within = 'html', { coloursOnly = false } = {}): Promise<string[]> {
  // A foot that stays in sight covers what can be scrolled out from under it; axe would call that too small to touch.
  const size = page.viewportSize()!;
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width: size.width, height: Math.max(size.height, height) });
  // Through the browser's own tools, because the app's content policy rightly refuses a foreign script in the page.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(await readFile(axePath, 'utf8'));
  const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
  const runOnly = coloursOnly ? { type: 'rule', values: ['color-contrast'] } : { type: 'tag', values: rules };
  const run = await page.evaluate(
    ([selector, only]) => {
      const { axe } = window as unknown as { axe: { run: (root: Element, options: object) => Promise<AxeRun> } };
      return axe.run(document.querySelector(selector)!, { runOnly: only });
    },
    [within, runOnly] as const,
  );
  await page.setViewportSize(size);
  return run.violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}\n${node.failureSummary}`));
}

/** By night only colours differ. */
export async function passesInBothThemes(page: Page, within?: string) {
  expect(await accessibilityProblems(page, within), 'by day').toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await accessibilityProblems(page, within, { coloursOnly: true }), 'by night').toEqual([]);
  await page.emulateMedia({ colorScheme: 'light' });
}

export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const [content, window] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth] as const);
  expect(content).toBeLessThanOrEqual(window);
}

export { expect };
