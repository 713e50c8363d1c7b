/**
 * A field's page with five seasons behind each insect at a processor four times slower, until it answers: the season's
 * strips stand, and no long task that began before is still running. The earlier seasons are those of the invented demo,
 * repeated in other years.
 *
 * Target: it answers within 1 s.
 */
import { judged, proxied, untilInteractive, withBrowser, withDemo } from '../app.mjs';

const SEASONS = 5;
const PORT = 4995;
const PROXY_PORT = 4996;
const FIELD = 'dunnoch-sparrow';

export const run = () =>
  withDemo(PORT, async (base) => {
    const path = `/api/fields/${FIELD}`;
    const view = await (await fetch(`${base}${path}`)).json();
    const proxy = proxied(PORT, PROXY_PORT, path, withSeasons(view));
    try {
      return await withBrowser(measure);
    } finally {
      proxy.close();
    }
  });

/** Five earlier seasons of each trap design. */
function withSeasons(view) {
  const insects = view.insects.map((insect) => {
    const designs = [...new Set(insect.earlierSeasons.map(({ design }) => design))];
    const earlierSeasons = designs.flatMap((design) => {
      const own = insect.earlierSeasons.filter((season) => season.design === design);
      return Array.from({ length: SEASONS }, (_, back) => ({ ...own[back % own.length], year: own[0].year - back }));
    });
    return { ...insect, earlierSeasons };
  });
  return { ...view, insects };
}

async function measure(browser) {
  const results = [];
  for (const [name, viewport] of Object.entries({ desk: { width: 1440, height: 900 }, phone: { width: 390, height: 844 } })) {
    const address = `http://127.0.0.1:${PROXY_PORT}/fields/${FIELD}`;
    const { page, interactive, longest } = await untilInteractive(browser, viewport, address, 'svg.rate .rate-line');
    const lines = await page.locator('.earlier-line').count();
    results.push(
      judged(
        `${name}: a field with ${SEASONS} earlier seasons, until interactive`,
        interactive,
        1000,
        `${lines} earlier lines drawn; longest task ${Math.round(longest)} ms`,
      ),
    );
    await page.close();
  }
  return results;
}
