/**
 * Takes the pictures of docs/pictures/ from the demo, at phone and desk width, by day and by night, and from an empty
 * program what stands before it: `node scripts/pictures.mjs`. With a folder and names of sizes, takes those into that:
 * `node scripts/pictures.mjs /tmp/pictures small landscape tablet wide`.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { findChromium } from './chromium.mjs';
import { root } from './lib.mjs';
import { served } from './served.mjs';

const PORTS = { demo: 4198, empty: 4199 };
const SIZES = {
  desk: { width: 1440, height: 900 },
  phone: { width: 390, height: 844 },
  small: { width: 360, height: 640 },
  landscape: { width: 844, height: 390 },
  tablet: { width: 1024, height: 768 },
  wide: { width: 1920, height: 1080 },
};
const PHONES = ['phone', 'small', 'landscape'];
const [to = join(root, 'docs/pictures'), ...asked] = process.argv.slice(2);
const sizes = asked.length > 0 ? asked : ['desk', 'phone'];
/** Of the one person on an empty program, which lives as long as its pictures take. */
const PASSWORD = 'herons over wet clover';

mkdirSync(to, { recursive: true });
const demo = await served(PORTS.demo, '--demo');
const browser = await chromium.launch({
  executablePath: (await findChromium()) ?? undefined,
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'],
});
try {
  for (const size of sizes)
    for (const colorScheme of ['light', 'dark']) {
      const look = { viewport: SIZES[size], colorScheme, locale: 'en-US', isMobile: PHONES.includes(size) };
      await inside(look, `${size}-${colorScheme}`);
      await atTheDoor(look, `${size}-${colorScheme}`);
    }
} finally {
  await browser.close();
  await demo.stop();
}

/** The page once two pictures of it are alike: the ground of the map is painted over its marks for a moment. */
async function still(page) {
  let before = await page.screenshot();
  for (let tries = 0; tries < 20; tries++) {
    await page.waitForTimeout(250);
    const now = await page.screenshot();
    if (now.equals(before)) return now;
    before = now;
  }
  throw new Error(`${page.url()} does not stand still`);
}

function camera(page, address, ending) {
  return {
    save: async (name) => {
      await page.evaluate(() => document.fonts.ready);
      writeFileSync(join(to, `${name}-${ending}.png`), await still(page));
    },
    visit: async (path, shown) => {
      await page.goto(new URL(path, address).href);
      await page.locator(shown).first().waitFor();
    },
  };
}

/** The pages for whoever comes, and the first steps of a program that is still empty. */
async function atTheDoor(look, ending) {
  const server = await served(PORTS.empty, '--accounts');
  const page = await browser.newPage(look);
  const { save, visit } = camera(page, server.address, ending);
  try {
    await visit('/', 'main h1');
    await save('first-person');
    await page.getByLabel('Code from the terminal').fill(/\b[A-Z2-9]{4}(?:-[A-Z2-9]{4})+\b/.exec(server.printed())[0]);
    await page.getByLabel('Name').fill('Ida Brook');
    await page.getByLabel('Password of your choice').fill(PASSWORD);
    await page.getByRole('button', { name: 'Become the coordinator' }).click();
    await page.locator('.first-steps').waitFor();
    await save('first-steps');
    const invited = await page.request.post(new URL('/api/invitations', server.address).href, {
      data: { role: 'scout', farms: [] },
      headers: { origin: server.address },
    });
    await page.context().clearCookies();
    await visit((await invited.json()).path, 'main form');
    await save('join');
    await visit('/sign-in', 'main form');
    await save('sign-in');
  } finally {
    await page.close();
    await server.stop();
  }
}

async function inside(look, ending) {
  const page = await browser.newPage(look);
  const { save, visit } = camera(page, demo.address, ending);
  await visit('/', '.cell');
  await save('week');
  await page.locator('.cell.verb-decide').first().click();
  await page.locator('.open-evidence .evidence-because').waitFor();
  // The cell and its evidence together, clear of the heading that stays on top.
  await page
    .locator('.cell.verb-decide')
    .first()
    .evaluate((cell) => scrollTo(0, cell.getBoundingClientRect().top + scrollY - 90));
  await save('evidence');
  await page.locator('.open-evidence a').last().click();
  await page.locator('svg.rate').first().waitFor();
  await page.evaluate(() => scrollTo(0, 0));
  await save('field');
  await visit('/fields', '.traps tbody tr, .trap-card');
  await save('traps');
  await page.getByRole('button', { name: 'Add a trap' }).click();
  await page.getByRole('radio', { name: 'mesh cone' }).check();
  await save('trap-form');
  await visit('/fields', '.traps tbody tr, .trap-card');
  await page.getByRole('button', { name: 'Print labels' }).click();
  await page.getByRole('dialog').waitFor();
  await save('labels');
  await visit('/traps/CR2-MC-26', '.trap-facts');
  await save('trap');
  await page
    .getByRole('button', { name: /^History of check/ })
    .first()
    .click();
  await page.locator('.version').first().waitFor();
  await save('history');
  await visit('/fields/tollyacre-garden', '.flights');
  await page.locator('.flights').first().scrollIntoViewIfNeeded();
  await save('field-flights');
  await visit('/flights', '.flight-rows tbody tr');
  await page.getByText('all fitted').waitFor();
  await save('flights');
  await visit('/fields/quernstead-kiln', 'svg.rate');
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Sample', exact: true }).click();
  await save('sample-form');
  await visit('/bulletin', '.bulletin-sheet h3');
  await save('bulletin');
  await visit('/sheet', '.sheet-grid');
  await save('sheet');
  await visit('/rounds/counts', '.counts-box');
  await save('counts');
  await visit('/map', '.station-mark');
  await save('map');
  await visit('/season?year=2027', '.insect-plan');
  await save('season-plan');
  await visit('/season?year=2027&part=numbers', '.numbers-plain');
  await save('season-numbers');
  await visit('/season?year=2027&part=lures', '.order-list');
  await save('season-lures');
  await visit('/season?year=2027&part=budget', '.season-total');
  await save('season-budget');
  await visit('/season?part=truth', '.truth-lines');
  await save('season-truth');
  for (const part of ['review', 'years', 'designs', 'lures', 'infestation']) {
    await visit(`/season/review?part=${part}&insect=ostrinia-nubilalis`, '.review h3, .lesson');
    await save(`review-${part}`);
  }
  await visit('/questions', '.question, .quiet');
  await save('questions');
  await visit('/conflicts', '.quiet, .conflict');
  await save('conflicts');
  await visit('/program/people', '.people-page, main');
  await save('people');
  await visit('/rounds', '.rounds-due');
  await page.getByRole('button', { name: 'Plan the rounds' }).click();
  await page.locator('.round-sheet').first().waitFor();
  await save('rounds');
  await visit('/program/settings', '.setting');
  await save('settings');
  await visit('/rounds/scouting', '.scouting-table');
  await save('scouting');
  // Rules of a figure alone have a plan with curves.
  await page.locator('.scouting-table tr', { hasText: '%' }).first().locator('a').first().click();
  await page.locator('main svg').first().waitFor();
  await save('scouting-plan');
  await visit('/scout', 'main h1');
  await save('scout');
  // After dusk the round is dark by itself, whatever the time at which pictures are taken.
  await page.clock.setFixedTime(new Date(`${new Date().toISOString().slice(0, 10)}T17:00:00Z`));
  await visit('/round', 'main h1');
  await page.getByRole('button', { name: 'Start the round' }).waitFor();
  await save('round-start');
  await page.getByRole('button', { name: 'Start the round' }).click();
  await page.getByRole('button', { name: /^Next:/ }).waitFor();
  await save('round-list');
  await page.getByRole('button', { name: /^Next:/ }).click();
  const warning = page.getByRole('button', { name: /stands outside/ });
  if (await warning.isVisible().catch(() => false)) await warning.click();
  await save('round-trap');
  await visit('/round?show=unsent', 'main h1');
  await save('round-unsent');
  await page.close();
}
