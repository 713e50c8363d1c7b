/** What the browser tests share: a page that must keep its console clean, and the API's own answers to hold it to. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type APIRequestContext, test as base, type ConsoleMessage, expect, type Page } from '@playwright/test';
import type { FieldView, WeekView } from '../packages/core/src/index.ts';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const axe = readFile(axePath, 'utf8');

/** Every test fails on an error or warning in the console, and on an exception in the page, unless it may complain. */
export const test = base.extend<{ mayComplain: boolean; cleanConsole: undefined }>({
  mayComplain: [false, { option: true }],
  cleanConsole: [
    async ({ page, mayComplain }, use) => {
      const said: string[] = [];
      const hear = (message: ConsoleMessage) => {
        if (message.type() === 'error' || message.type() === 'warning') said.push(message.text());
      };
      const fail = (error: Error) => said.push(error.message);
      page.on('console', hear).on('pageerror', fail);
      await use(undefined);
      page.off('console', hear).off('pageerror', fail);
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

/** Opens a form from the one menu of a field's page. */
export async function record(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByRole('menuitem', { name, exact: true }).click();
}

/** The part of a field's page that is about one insect. */
export const partOf = (page: Page, insect: string) => page.locator(`[data-insect="${insect}"]`);

interface AxeRun {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
  }[];
}

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds against WCAG 2.2 A and AA within an element, ready to read in a failed test. */
export const accessibilityProblems = (page: Page, within = 'html'): Promise<string[]> =>
  inFull(page, () => axeFinds(page, within, { type: 'tag', values: RULES }));

/** By night only colours differ. */
export async function passesInBothThemes(page: Page, within = 'html') {
  await inFull(page, async () => {
    expect(await axeFinds(page, within, { type: 'tag', values: RULES }), 'by day').toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await axeFinds(page, within, { type: 'rule', values: ['color-contrast'] }), 'by night').toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });
  });
}

/** A foot that stays in sight covers what can be scrolled out from under it; axe would call that too small to touch. */
async function inFull<T>(page: Page, look: () => Promise<T>): Promise<T> {
  const size = page.viewportSize()!;
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  if (height <= size.height) return look();
  await page.setViewportSize({ width: size.width, height });
  const found = await look();
  await page.setViewportSize(size);
  return found;
}

async function axeFinds(page: Page, within: string, runOnly: object): Promise<string[]> {
  // Through the browser's own tools, because the app's content policy rightly refuses a foreign script in the page.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(await axe);
  const run = await page.evaluate(
    ([selector, only]) => {
      const { axe } = window as unknown as { axe: { run: (root: Element, options: object) => Promise<AxeRun> } };
      // What passes is not described: most of the work would be for that.
      return axe.run(document.querySelector(selector)!, { runOnly: only, resultTypes: ['violations'] });
    },
    [within, runOnly] as const,
  );
  return run.violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}\n${node.failureSummary}`));
}

export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const [content, window] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth] as const);
  expect(content).toBeLessThanOrEqual(window);
}

export { expect };
