import type { ProgramSettings } from '../packages/core/src/index.ts';
import { PASSWORD, startWithAccounts } from './accounts.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, test } from './page.ts';

// One server for the file: its people join one after another.
test.describe.configure({ mode: 'serial' });
// A session that is not there yet is answered with 401, which browsers note in the console.
test.use({ mayComplain: true, locale: 'en-US' });

type Program = ProgramSettings & { farms: string[] };
let server: Awaited<ReturnType<typeof startWithAccounts>>;
test.beforeAll(async () => {
  server = await startWithAccounts();
});
test.afterAll(() => server.stop());

const places = (page: import('@playwright/test').Page) => page.getByRole('navigation', { name: 'Pages' }).getByRole('link');

// How many questions are open comes and goes.
const FOR_STAFF = ['This week', /^Fields & traps/, 'Rounds', 'Flights', 'Season'];
const FOR_GROWERS = ['This week', /^Fields & traps/, 'Scouting', 'Flights', 'Review'];
/** On a phone: under the thumb. */
const BARS = {
  coordinator: ['Week', 'Round', /^Questions/, 'More'],
  scout: ['Round', 'Scout', 'Fields', 'More'],
  grower: ['My fields', 'Record', 'Map', 'More'],
  reader: ['Week', 'More'],
};

/** What the Program menu leads to. */
async function programPages(page: import('@playwright/test').Page): Promise<string[]> {
  await page.getByRole('button', { name: 'Program', exact: true }).click();
  const menu = page.getByRole('navigation', { name: 'Program' });
  await expect(menu).toBeVisible();
  const found = await menu.getByRole('link').allTextContents();
  await page.keyboard.press('Escape');
  await expect(menu).toBeHidden();
  await expect(page.getByRole('button', { name: 'Program', exact: true })).toBeFocused();
  return found;
}

test('the code from the terminal makes the first coordinator, who comes to this week', async ({ page, isMobile }) => {
  await page.goto(server.url);
  await expect(page.getByRole('heading', { name: 'The first coordinator' })).toBeVisible();
  await page.getByRole('button', { name: 'Become the coordinator' }).click();
  await expect(page.getByLabel('Code from the terminal')).toBeFocused();
  await page.getByLabel('Code from the terminal').fill('AAAA-BBBB');
  await page.getByLabel('Name').fill('Ida Brook');
  await page.getByLabel('Password of your choice').fill('too short');
  await page.getByRole('button', { name: 'Become the coordinator' }).click();
  await expect(page.getByText('9 characters so far')).toBeVisible();
  await page.getByLabel('Password of your choice').fill(PASSWORD);
  await page.getByRole('button', { name: 'Become the coordinator' }).click();
  await expect(page.getByText('That is not the code.')).toBeVisible();
  await expect(page.getByLabel('Name')).toHaveValue('Ida Brook');
  expect(await accessibilityProblems(page)).toEqual([]);
  await page.getByLabel('Code from the terminal').fill(server.code());
  await page.getByRole('button', { name: 'Become the coordinator' }).click();
  await expect(page.locator('.cell').first()).toBeVisible();
  await expect(places(page)).toHaveText(isMobile ? BARS.coordinator : FOR_STAFF);
  expect(await programPages(page)).toEqual(['People', 'Rules & insects', 'Weather', 'Import & export', 'Settings', 'Help']);
});

test('a wrong password is told in a way that helps, and a right one opens the page that was asked for', { tag: '@desk' }, async ({
  page,
}) => {
  await page.goto(`${server.url}/program/settings`);
  await page.getByLabel('Name').fill('ida  brook');
  const password = page.getByLabel('Password', { exact: true });
  await password.fill('herons over wet clovers');
  await expect(password).toHaveAttribute('type', 'password');
  await page.getByRole('button', { name: 'Show the password' }).click();
  await expect(password).toHaveAttribute('type', 'text');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByRole('alert')).toContainText('do not belong together');
  await expect(page.getByRole('alert')).toBeFocused();
  await expect(password).toHaveValue('herons over wet clovers');
  await password.fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByText('Ida Brook')).toBeVisible();
  await expect(page).toHaveURL(/settings/);
});

test('a pass-key made in the settings opens the door without a password, until it is taken away', { tag: '@desk' }, async ({
  page,
  context,
}) => {
  // Keys belong to a name: not to a bare address.
  const url = server.url.replace('127.0.0.1', 'localhost');
  const device = await context.newCDPSession(page);
  await device.send('WebAuthn.enable');
  await device.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      protocol: 'ctap2',
      transport: 'internal',
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  });
  await page.goto(`${url}/program/settings`);
  await page.getByLabel('Name').fill('Ida Brook');
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page.locator('.sessions')).toContainText('Here: signed in');
  await page.getByRole('button', { name: 'Change the password' }).click();
  const change = page.getByRole('dialog', { name: 'Change the password' });
  await change.getByLabel('The password you have now').fill('something else entirely');
  await change.getByLabel('Password of your choice').fill('too short');
  await change.getByRole('button', { name: 'Change the password' }).click();
  await expect(change.getByText('9 characters so far')).toBeVisible();
  // The same once more: the others of this file sign in with it.
  await change.getByLabel('Password of your choice').fill(PASSWORD);
  await change.getByRole('button', { name: 'Change the password' }).click();
  await expect(change.getByText('That is not your password.')).toBeVisible();
  await change.getByLabel('The password you have now').fill(PASSWORD);
  await change.getByRole('button', { name: 'Change the password' }).click();
  await expect(page.getByText('The password is changed.')).toBeVisible();
  await page.getByRole('button', { name: 'Add a pass-key' }).click();
  const sheet = page.getByRole('dialog', { name: 'Add a pass-key' });
  await sheet.getByLabel('What to call it').fill('Desk');
  await sheet.getByLabel('Password', { exact: true }).fill('something else entirely');
  await sheet.getByRole('button', { name: 'Go on' }).click();
  await expect(sheet.getByText('That is not your password.')).toBeVisible();
  expect(await accessibilityProblems(page)).toEqual([]);
  await sheet.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await sheet.getByRole('button', { name: 'Go on' }).click();
  await expect(sheet).toBeHidden();
  await expect(page.locator('.pass-keys li')).toContainText('Desk, added');
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await page.getByRole('button', { name: 'Sign in with a pass-key' }).click();
  await expect(page.locator('.cell').first()).toBeVisible();
  await page.goto(`${url}/program/settings`);
  await expect(page.locator('.pass-keys li')).toContainText('last used');
  await page.getByRole('button', { name: 'Take the pass-key Desk away' }).click();
  await expect(page.locator('.pass-keys li')).toHaveCount(0);
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await page.getByRole('button', { name: 'Sign in with a pass-key' }).click();
  await expect(page.getByRole('alert')).toContainText('not known here any more');
});

test('a grower joins by a link, sees own farms and nothing of others', async ({ page, playwright, context, isMobile }) => {
  const coordinator = await playwright.request.newContext();
  await server.signIn(coordinator, 'Ida Brook');
  const { farms } = (await (await coordinator.get(`${server.url}/api/program`)).json()) as Program;
  const [own, other] = [farms[0]!, farms[1]!];
  const path = await server.invite(coordinator, 'grower', [own]);
  await page.goto(`${server.url}${path}`);
  await expect(page.getByText('You are invited as grower.')).toContainText(own);
  await page.getByLabel('Name').fill('Lena Hollin');
  await page.getByLabel('Password of your choice').fill(PASSWORD);
  await page.getByRole('button', { name: 'Join' }).click();
  if (isMobile) {
    await expect(page.getByRole('heading', { level: 1, name: 'My fields' })).toBeVisible();
    await expect(page.locator('.own-list li, .own-rest').first()).toBeVisible();
  } else {
    await expect(page.locator('.cell').first()).toBeVisible();
    await expect(page.getByText(own).locator('visible=true').first()).toBeVisible();
  }
  await expect(page.getByText(other)).toHaveCount(0);
  await expect(places(page)).toHaveText(isMobile ? BARS.grower : FOR_GROWERS);
  expect(await programPages(page)).toEqual(['Rules & insects', 'Weather', 'Import & export', 'Settings', 'Help']);
  await page.goto(`${server.url}/program/people`);
  await expect(page.getByRole('heading', { name: 'This page is not open to you' })).toBeVisible();
  await context.clearCookies();
  await page.goto(`${server.url}${path}`);
  await expect(page.getByRole('heading', { name: 'This link does not hold any more' })).toBeVisible();
});

test('a scout reaches the round, a reader no place', async ({ browser, playwright, viewport, isMobile }) => {
  const coordinator = await playwright.request.newContext();
  await server.signIn(coordinator, 'Ida Brook');
  for (const [role, name, expected] of [
    // A scout has no rounds of others to plan.
    ['scout', 'Tom Marsh', FOR_STAFF],
    ['reader', 'Sam Quill', ['This week']],
  ] as const) {
    const context = await browser.newContext({ viewport, locale: 'en-US' });
    await server.join(context.request, await server.invite(coordinator, role), name);
    const page = await context.newPage();
    await page.goto(server.url);
    await expect(places(page)).toHaveText(isMobile ? BARS[role] : [...expected]);
    if (role === 'reader') {
      await expect(page.getByRole('heading', { name: 'The week of a reader' })).toBeVisible();
      await page.goto(`${server.url}/fields`);
      await expect(page.getByRole('heading', { name: 'This page is not open to you' })).toBeVisible();
    } else {
      await expect(page.locator('.cell').first()).toBeVisible();
    }
    await context.close();
  }
});

test('the coordinator invites, changes a role and takes that back', async ({ page }) => {
  await server.signIn(page.request, 'Ida Brook');
  await page.goto(`${server.url}/program/people`);
  await page.getByRole('radio', { name: /^grower/ }).check();
  await page.getByRole('button', { name: 'Make a link' }).click();
  await expect(page.getByText('Choose at least one farm for a grower.')).toBeVisible();
  await page.locator('.invite').getByRole('checkbox').first().check();
  await page.getByRole('button', { name: 'Make a link' }).click();
  await expect(page.getByRole('textbox', { name: 'Link' })).toHaveValue(/\/join\/\S{20,}/);
  const role = page.getByLabel('Role of Tom Marsh');
  await role.selectOption('reader');
  await expect(page.getByText('Tom Marsh is now reader.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(role).toHaveValue('scout');
  await expect(page.getByText('Tom Marsh is now scout.')).toBeVisible();
  await page
    .getByRole('button', { name: /^Withdraw/ })
    .first()
    .click();
  await expect(page.getByText('No invitation is open.')).toBeVisible();
  for (const theme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: theme });
    expect(await accessibilityProblems(page)).toEqual([]);
  }
  await expectNoSidewaysScroll(page);
});

test('a session that ends leaves what was typed, and the page goes on after signing in', async ({ page, context }) => {
  await server.signIn(page.request, 'Ida Brook');
  await page.goto(`${server.url}/fields`);
  const search = page.getByRole('searchbox').or(page.getByLabel('Search')).first();
  await search.fill('typed before');
  await context.clearCookies();
  // Whichever question is asked next tells that the session has ended.
  await page.getByRole('button', { name: 'A day earlier' }).click();
  const again = page.getByRole('dialog', { name: 'Your session has ended' });
  await expect(again).toBeVisible();
  expect(await accessibilityProblems(page)).toEqual([]);
  await again.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await again.getByRole('button', { name: 'Sign in' }).click();
  await expect(again).toHaveCount(0);
  await expect(search).toHaveValue('typed before');
});

test('signing out everywhere ends the sessions of other machines too', { tag: '@desk' }, async ({ page, browser }) => {
  const elsewhere = await browser.newContext();
  await server.signIn(elsewhere.request, 'Ida Brook');
  await server.signIn(page.request, 'Ida Brook');
  await page.goto(`${server.url}/program/settings`);
  await page.getByRole('button', { name: 'Sign out everywhere' }).click();
  await expect(page.getByRole('heading', { name: 'Sign in' })).toBeVisible();
  const { person } = (await (await elsewhere.request.get(`${server.url}/api/session`)).json()) as { person: object | null };
  expect(person).toBeNull();
  await elsewhere.close();
});
