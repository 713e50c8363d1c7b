/** Does one task and ends. */
import { parentPort, workerData } from 'node:worker_threads';
import { workAtOnce } from './tasks.ts';

parentPort!.postMessage(workAtOnce(workerData.task, workerData.program));
