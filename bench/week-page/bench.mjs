/**
 * This week with 500 fields and 4 insects at a processor four times slower: until it answers, and its longest tasks
 * while it is scrolled to the end. The fields are those of the invented demo, repeated under other names.
 *
 * Measured is a page that has been open before, as it is on most days: the browser has its scripts, and has read them.
 * A proxy in front of the server gives the large answer, compressed as the server does; nothing of the measuring runs in
 * the page but an observer, because at this speed even a question takes a tenth of a second.
 *
 * Targets: it answers within 1 s, and no task while scrolling takes more than 60 ms.
 */
import { judged, proxied, tasksDuring, untilInteractive, withBrowser, withDemo } from '../app.mjs';

const FIELDS = 500;
const FARMS = 50;
const PORT = 4997;
const PROXY_PORT = 4998;

export const run = () =>
  withDemo(PORT, async (base) => {
    const week = await (await fetch(`${base}/api/week`)).json();
    const proxy = proxied(PORT, PROXY_PORT, '/api/week', repeated(week));
    try {
      return await withBrowser(measure);
    } finally {
      proxy.close();
    }
  });

function repeated(week) {
  const fields = Array.from({ length: FIELDS }, (_, index) => {
    const field = week.fields[index % week.fields.length];
    return { ...field, fieldId: `${field.fieldId}-${index}`, name: `${field.name} ${index}`, farm: `Farm ${index % FARMS}` };
  });
  const times = Math.ceil(FIELDS / week.fields.length);
  const due = Object.fromEntries(
    Object.entries(week.due).map(([kind, items]) => [
      kind,
      Array.from({ length: times }, (_, copy) =>
        items.map((item) => ({
          ...item,
          ...(item.trapId && { trapId: `${item.trapId}-${copy}`, station: `${item.station}-${copy}` }),
          ...(item.fieldId && { fieldId: `${item.fieldId}-${copy}` }),
        })),
      ).flat(),
    ]),
  );
  return { ...week, due, fields };
}

async function measure(browser) {
  const results = [];
  for (const [name, viewport] of Object.entries({ desk: { width: 1440, height: 900 }, phone: { width: 390, height: 844 } })) {
    const { page, interactive, longest } = await untilInteractive(browser, viewport, `http://127.0.0.1:${PROXY_PORT}`, '.cell');
    const drawn = await page.locator('.cell').count();
    await page.mouse.move(viewport.width / 2, viewport.height / 2);
    const tasks = await tasksDuring(browser, page, async () => {
      for (let step = 0; step < 120; step += 1) {
        await page.mouse.wheel(0, 400);
        await page.waitForTimeout(30);
      }
    });
    const px = await page.evaluate(() => Math.round(scrollY));
    results.push(
      judged(
        `${name}: ${FIELDS} fields, until interactive`,
        interactive,
        1000,
        `${drawn} cells drawn; longest task ${Math.round(longest)} ms`,
      ),
      judged(
        `${name}: longest task over ${px} px of scrolling`,
        tasks[0],
        60,
        `${tasks.filter((ms) => ms > 50).length} of ${tasks.length} tasks over 50 ms`,
      ),
    );
    await page.close();
  }
  return results;
}
