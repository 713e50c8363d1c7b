/**
 * `npm run skill -- flight`: the tables of docs/flight-skill.md. Intervals are stated to hold 80 %. Every cell is a job of
 * its own, shared out to as many threads as the machine has processors.
 */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { markdownTable, percent } from '../markdown.mjs';
import { CUTS, YEARS } from './simulate.mjs';

const signed = (value, digits) => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(digits)}`;
const mean = (sum, n, digits) => (n === 0 ? '–' : signed(sum / n, digits));

const cellRow = (cell, seeds, t) => ({
  flights: cell.flights,
  traps: cell.traps,
  'nights alike': cell.night === 0 ? 'no' : cell.night,
  curve: cell.skewed ? 'skewed' : 'normal',
  flown: `${Math.round(100 * cell.cut)} %`,
  found: percent(t.found, seeds),
  'one too few, too many': `${percent(t.fewer, seeds)}, ${percent(t.more, seeds)}`,
  figure: percent(t.figure.n, t.found),
  'its bias': t.figure.n < FEW ? '–' : mean(t.figure.bias, t.figure.n, 3),
  'its interval held': t.figure.n < FEW ? '–' : percent(t.figure.held, t.figure.n),
  'interval only': percent(t.interval.n, t.found),
  'that held': t.interval.n < FEW ? '–' : percent(t.interval.held, t.interval.n),
  'cannot tell': percent(t.found - t.shown, t.found),
  'width shown': t.shown === 0 ? '–' : (t.width / t.shown).toFixed(2),
  'peak bias, °F·d': mean(t.peak, t.found, 0),
  'peak held': percent(t.peakHeld, t.found),
});
/** Of fewer cases than these nothing is said. */
const FEW = 20;

const wrongRow = (cell, { wrong }) => {
  const n = wrong.over + wrong.running + wrong.nothing;
  return {
    flights: cell.flights,
    past: cell.past,
    traps: cell.traps,
    curve: cell.skewed ? 'skewed' : 'normal',
    flown: `${Math.round(100 * cell.cut)} %`,
    'number wrong': n,
    'last flight shown as over': percent(wrong.over, n),
    'as running': percent(wrong.running, n),
    'none shown': percent(wrong.nothing, n),
    'number called unsure': percent(wrong.unsure, n),
  };
};

const wholeRow = (cell, seeds, t) => ({
  'true flights': cell.flights,
  traps: cell.traps,
  'nights alike': cell.night === 0 ? 'no' : cell.night,
  curve: cell.skewed ? 'skewed' : 'normal',
  right: percent(t.right, seeds),
  missed: percent(t.fewer, seeds),
  'too many': percent(t.more, seeds),
  'missed where the last came to its half': percent(t.wholeMissed, t.whole),
  'where autumn came first': percent(t.cutOffMissed, t.cutOff),
  unsure: percent(t.unsure, seeds),
  'right when sure': percent(t.rightWhenSure, t.sure),
  'peak bias, °F·d': mean(t.bias, t.peaks, 1),
  'peak held': percent(t.held, t.peaks),
});

const crossed = (choices) =>
  Object.entries(choices).reduce(
    (cells, [name, values]) => cells.flatMap((cell) => values.map((value) => ({ ...cell, [name]: value }))),
    [{}],
  );

const EVERY = { traps: [1, 3], night: [0, 0.7], skewed: [false, true] };
const ONE = { traps: [1], night: [0.7], skewed: [false], flights: [1] };

/** Seasons cut off in mid-flight: title, cells, and what all of them have in common. */
const CUT = [
  ['With three past seasons', { ...EVERY, flights: [1] }, { past: 3 }],
  [
    'With the model alone, published peaks good to a tenth',
    { ...ONE, traps: [1, 3], skewed: [false, true] },
    { past: 0, model: true },
  ],
  ['Nothing known beforehand', { ...EVERY, flights: [1] }, { past: 0 }],
  ['The second of two flights', { ...ONE, skewed: [false, true], flights: [2] }, { past: 3 }],
  ['With one past season', ONE, { past: 1 }],
  ['With ten past seasons', ONE, { past: 10 }],
  ['Years that differ by 100 °F·d where 70 is believed', ONE, { past: 3, years: { ...YEARS, peak: 100 } }],
  ['Visits that scatter much, k 1', ONE, { past: 3, k: 1 }],
  ['Visits that scatter little, k 8', ONE, { past: 3, k: 8 }],
  ['Checked every seven days', ONE, { past: 3, rhythm: 7 }],
  ['Checked every three or four days', ONE, { past: 3, rhythm: 3 }],
];
const WHOLE = [['Whole seasons, nothing known beforehand', { flights: [0, 1, 2, 3], ...EVERY }, { past: 0 }]];

/** The tables of the document. */
export async function skill({ seeds }) {
  const ask = workers(seeds);
  const cut = CUT.map(([title, choices, more]) => ({
    title,
    cells: crossed(choices).map((cell) => ({ ...cell, ...more })),
  })).map(({ title, cells }) => ({ title, jobs: cells.map((cell) => ({ cell, done: ask.run('mid-flight', cell) })) }));
  const whole = WHOLE.map(([title, choices, more]) => ({
    title,
    jobs: crossed(choices)
      .map((cell) => ({ ...cell, ...more }))
      .map((cell) => ({ cell, done: ask.run('whole', cell) })),
  }));
  const parts = [`${seeds} seasons a cell; intervals are stated to hold 80 %.`];
  const wrong = [];
  for (const { title, jobs } of cut) {
    const rows = [];
    for (const { cell, done } of jobs) {
      const cells = (await done).map((t, i) => [{ ...cell, cut: CUTS[i] }, t]);
      rows.push(...cells.map(([each, t]) => cellRow(each, seeds, t)));
      if (title.startsWith('The second')) wrong.push(...cells.map(([each, t]) => wrongRow(each, t)));
    }
    parts.push(`### ${title}`, markdownTable(rows));
  }
  parts.push('### The second of two flights, where the number of flights came out wrong', markdownTable(wrong));
  for (const { title, jobs } of whole) {
    const rows = [];
    for (const { cell, done } of jobs) rows.push(wholeRow(cell, seeds, await done));
    parts.push(`### ${title}`, markdownTable(rows));
  }
  await ask.end();
  return parts.join('\n\n');
}

/** Threads that take one job after another. */
function workers(seeds) {
  const waiting = [];
  const idle = [];
  const all = Array.from({ length: availableParallelism() }, () => {
    const worker = new Worker(new URL('./worker.mjs', import.meta.url), { workerData: { seeds } });
    idle.push(worker);
    return worker;
  });
  const next = () => {
    while (idle.length > 0 && waiting.length > 0) {
      const [worker, { kind, cell, resolve, reject }] = [idle.pop(), waiting.shift()];
      worker.once('error', reject);
      worker.once('message', (answer) => {
        worker.off('error', reject);
        idle.push(worker);
        resolve(answer);
        next();
      });
      worker.postMessage({ kind, cell });
    }
  };
  return {
    run: (kind, cell) =>
      new Promise((resolve, reject) => {
        waiting.push({ kind, cell, resolve, reject });
        next();
      }),
    end: () => Promise.all(all.map((worker) => worker.terminate())),
  };
}
