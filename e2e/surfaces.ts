/** Every page, with all on it open that can be: for tests of what must hold everywhere. No words, so that any language will do. */
import { expect, type Page } from '@playwright/test';
import type { WeekView } from '../packages/core/src/index.ts';

export interface Surface {
  readonly name: string;
  readonly path: (week: WeekView) => string;
  /** Which of what is folded is unfolded. Default: all. */
  readonly unfold?: string;
  /** Shown once the page is there. */
  readonly ready: string;
  /** Each opens one more thing; what must hold is looked at after each. */
  readonly open?: readonly ((page: Page) => Promise<void>)[];
}

const panel = async (page: Page) => expect(page.locator('dialog.panel[open]')).toBeVisible();
const closed = async (page: Page) => {
  await page.keyboard.press('Escape');
  await expect(page.locator('dialog.panel[open]')).toHaveCount(0);
};
/** Opens a panel from the nth of some buttons, or from an item of the menu that it opens; a form is sent off without what it needs, so that what is wrong with it shows. */
const panelOf = (buttons: string, nth: number, item?: number) => async (page: Page) => {
  if (await page.locator('dialog.panel[open]').count()) await closed(page);
  await page.locator(buttons).nth(nth).click();
  if (item !== undefined) await page.getByRole('menuitem').nth(item).click();
  await panel(page);
  const form = page.locator('dialog.panel[open] form button[type="submit"]');
  if (!(await form.count())) return;
  const boxes = page.locator('dialog.panel[open] form input:is([type="date"], [type="text"], :not([type]))');
  for (const box of await boxes.elementHandles()) {
    if (!(await box.evaluate((input) => input.isConnected && !(input as HTMLInputElement).readOnly))) continue;
    // What was emptied may take another question away with it, a moment later: a box that is gone needs no emptying.
    await box.fill('').catch((error) => {
      if (!/not attached/.test(String(error))) throw error;
    });
  }
  await form.click();
  await expect(page.locator('dialog.panel[open] form .faults').first()).toBeVisible();
};

/** Opens the page of a surface, waits until it stands still, and unfolds what is folded, and what that brings to light. */
export async function show(page: Page, { path, ready, unfold = 'details' }: Surface, week: WeekView): Promise<void> {
  await page.goto(path(week));
  await expect(page.locator(ready).first()).toBeVisible();
  await expect(page.locator('main[aria-busy="true"]')).toHaveCount(0);
  for (const _ of [1, 2]) {
    await page.evaluate((selector) => {
      for (const details of document.querySelectorAll<HTMLDetailsElement>(selector)) details.open = true;
    }, unfold);
    // What is folded is drawn when it is asked for.
    await expect(page.locator('details[open] > summary:only-child')).toHaveCount(0);
  }
}

const scoutingOf = ({ fieldId, insect }: { fieldId: string; insect: string }) => `/fields/${fieldId}/scouting/${insect}`;

export const SURFACES: readonly Surface[] = [
  { name: 'import, into the demo', path: () => '/program/data/import', ready: 'main .note' },
  {
    name: 'this week, with evidence',
    path: () => '/',
    ready: '.cell.verb-decide',
    open: [
      async (page) => {
        await page.locator('.cell.verb-decide').first().click();
        await expect(page.locator('.open-evidence')).toBeVisible();
      },
    ],
  },
  {
    name: 'a field, its forms and history',
    path: ({ due }) => `/fields/${due.decisions[0]!.fieldId}`,
    // The tables of one insect stand for those of the others.
    ready: 'svg.rate',
    open: [0, 1, 2, 3, 4].map((nth) => panelOf('.field-records .menu-button', 0, nth)),
  },
  {
    name: 'the traps and the form of a new one',
    path: () => '/fields?state=all',
    ready: '.traps tbody tr, .trap-card',
    open: [0, 1].map((nth) => panelOf('.actions button.primary, .actions button.primary ~ button.button', nth)),
  },
  {
    name: 'a trap, its forms and history',
    path: () => '/traps/CR2-MC-26',
    ready: '.trap-facts',
    open: [0, 1, 2, 3, 4, 5].map((nth) => panelOf('.trap-actions button', nth)),
  },
  { name: 'conflicts', path: () => '/conflicts', ready: '.quiet, .conflict' },
  { name: 'people', path: () => '/program/people', ready: 'main h1' },
  { name: 'rules and their sources', path: () => '/program/rules', ready: '.sources details' },
  { name: 'weather', path: () => '/program/weather', ready: 'main table' },
  { name: 'import and export', path: () => '/program/data', ready: '.setting' },
  {
    name: 'settings, with the program menu',
    path: () => '/program/settings',
    ready: '.setting',
    open: [
      async (page) => {
        await page.locator('.program-menu button').click();
        await expect(page.locator('.program-pages')).toBeVisible();
      },
    ],
  },
  { name: 'the help', path: () => '/help', ready: '.help-part' },
  { name: 'no page', path: () => '/nowhere', ready: 'main h1' },
  { name: 'no such field', path: () => '/fields/nowhere', ready: 'main h1' },
  { name: 'no such trap', path: () => '/traps/nowhere', ready: 'main h1' },
  { name: 'a link to join that is spent', path: () => '/join/AAAAAAAAAAAAAAAAAAAAAA', ready: 'main h1' },
  { name: 'flights', path: () => '/flights', ready: 'main[aria-busy="false"] table' },
  { name: 'a season planned', path: () => '/season', ready: 'main h2' },
  { name: 'rounds planned', path: () => '/rounds', ready: 'main h1' },
  { name: 'the bulletin', path: () => '/bulletin', ready: '.bulletin-sheet h3' },
  { name: 'the week on paper', path: () => '/sheet', ready: '.sheet-grid' },
  { name: 'the sheet of counts', path: () => '/rounds/counts', ready: '.counts-box' },
  { name: 'scouting plans', path: () => '/rounds/scouting', ready: 'main h1' },
  { name: 'one scouting plan', path: ({ due }) => scoutingOf(due.scouting[0]!), ready: 'main svg' },
  { name: 'the review of a season', path: () => '/season/review', ready: 'main h2' },
  { name: 'questions', path: () => '/questions', ready: 'main h1' },
  { name: 'further pages and choices', path: () => '/more', ready: '.more-pages a' },
  {
    name: 'what a grower writes down',
    path: () => '/record',
    ready: '.record-rows button',
    open: [0, 3].map((nth) => panelOf('.record-rows button', nth)),
  },
  { name: 'scouting on a phone', path: () => '/scout', ready: 'main h1' },
  { name: 'the start of a round', path: () => '/round', ready: '.stops li' },
];
