import { isWatched } from './terminal.ts';

export interface ProgressBar {
  readonly update: (done: number, total: number) => void;
  readonly stop: () => void;
}

/** A bar on stderr while somebody watches; otherwise nothing at all. It goes away when the work is done. */
export async function progressBar(label: string): Promise<ProgressBar> {
  if (!isWatched()) return { update: () => {}, stop: () => {} };
  const { default: progress } = await import('cli-progress');
  const bar = new progress.SingleBar({
    format: `${label} {bar} {percentage} %`,
    stream: process.stderr,
    hideCursor: true,
    clearOnComplete: true,
  });
  bar.start(1, 0);
  return {
    update(done, total) {
      bar.setTotal(total);
      bar.update(done);
    },
    stop: () => bar.stop(),
  };
}
