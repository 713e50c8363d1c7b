/** One thread of `npm run skill -- flight`: a cell at a time, in mid-flight at every cut point, or whole. */
import { parentPort, workerData } from 'node:worker_threads';
import { CUTS, flightFromSource, midFlight, wholeSeasons } from './simulate.mjs';

const { seeds } = workerData;
const core = await flightFromSource();

parentPort.on('message', ({ kind, cell }) => {
  parentPort.postMessage(
    kind === 'whole' ? wholeSeasons(core, seeds, cell) : CUTS.map((cut) => midFlight(core, seeds, { ...cell, cut })),
  );
});
