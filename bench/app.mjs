/** What the benches of the app share: the demo behind a server of its own, and a browser in front of it. */
import { createServer, request } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { chromium } from '@playwright/test';
import { findChromium } from '../scripts/chromium.mjs';
import { served } from '../scripts/served.mjs';

/** Serves the demo program while something is done with it, and takes both away. */
export async function withDemo(port, use) {
  const server = await served(port, '--demo');
  try {
    return await use(server.address);
  } finally {
    await server.stop();
  }
}

export async function withBrowser(use) {
  const browser = await chromium.launch({
    executablePath: (await findChromium()) ?? undefined,
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    return await use(browser);
  } finally {
    await browser.close();
  }
}

const SLOWDOWN = 4;
/** Loads until the browser has kept what it made of the scripts. */
const WARMING = 3;
/** Ms; long after the page has come to rest. */
const REST = 6_000;

export const judged = (name, milliseconds, most, note) => ({
  name,
  milliseconds,
  referenceMilliseconds: null,
  ratio: null,
  target: most,
  met: milliseconds <= most,
  note: `${note}; target ${most} ms`,
});

/** All as a server gives it, but for the answer at one address, compressed as the server does. */
export function proxied(port, proxyPort, path, answer) {
  const packed = gzipSync(JSON.stringify(answer));
  return createServer((asked, reply) => {
    if (asked.url === path) {
      reply.writeHead(200, { 'content-type': 'application/json', 'content-encoding': 'gzip', 'cache-control': 'no-cache' });
      reply.end(packed);
      return;
    }
    const upstream = request({ port, path: asked.url, method: asked.method, headers: asked.headers }, (given) => {
      reply.writeHead(given.statusCode, given.headers);
      given.pipe(reply);
    });
    asked.pipe(upstream);
  }).listen(proxyPort);
}

/** Runs in the page, before its own scripts: long tasks, and when what is waited for is on the screen. */
function observe(selector) {
  window.longTasks = [];
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) window.longTasks.push({ startTime, duration });
  }).observe({ type: 'longtask', buffered: true });
  new MutationObserver((_, observer) => {
    if (!document.querySelector(selector)) return;
    observer.disconnect();
    requestAnimationFrame(() =>
      setTimeout(() => {
        window.drawnAt = performance.now();
      }),
    );
  }).observe(document, { childList: true, subtree: true });
}

/**
 * Milliseconds of each task of the page's own thread while something is done with it, the longest first: the time that the
 * processor worked on it. Beside another program on the same processor a task lasts longer, and is no heavier.
 */
export async function tasksDuring(browser, page, act) {
  await browser.startTracing(page, { categories: ['disabled-by-default-devtools.timeline'] });
  await act();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  const pages = new Set(
    traceEvents.filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain').map(threadOf),
  );
  return traceEvents
    .filter((event) => event.name === 'RunTask' && pages.has(threadOf(event)))
    .map(({ tdur }) => tdur / 1_000)
    .sort((a, b) => b - a);
}

const threadOf = ({ pid, tid }) => `${pid} ${tid}`;

/**
 * A page at a slowed processor until what is waited for stands and no long task that began before is still running. It has
 * been open before, as on most days: the browser has its scripts, and has read them.
 */
export async function untilInteractive(browser, viewport, address, selector) {
  const page = await browser.newPage({ viewport });
  for (let load = 0; load < WARMING; load += 1) {
    await page.goto(address);
    await page.locator(selector).first().waitFor();
    await wait(1_500);
  }
  await page.addInitScript(observe, selector);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  await page.reload({ waitUntil: 'commit' });
  await wait(REST);
  const { interactive, longest } = await page.evaluate(() => {
    const before = window.longTasks.filter(({ startTime }) => startTime <= window.drawnAt);
    return {
      interactive: Math.max(window.drawnAt, ...before.map(({ startTime, duration }) => startTime + duration)),
      longest: Math.max(0, ...window.longTasks.map(({ duration }) => duration)),
    };
  });
  return { page, interactive, longest };
}
