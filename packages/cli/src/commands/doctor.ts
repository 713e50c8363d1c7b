import { statfs } from 'node:fs/promises';
import { join } from 'node:path';
import type { Problem } from '@duskwatch/core';
import { photoName, photoPath, photosIn } from '@duskwatch/server/photos';
import type { Store } from '@duskwatch/store';
import { type DataOption, dataFolder, describeDatabase, photoFolder, withDatabase } from '../database.ts';
import { done, faulty, type Outcome } from '../outcome.ts';
import { note } from '../terminal.ts';

/** Room that a backup and a season of photos want. */
const ROOM_GB = 1;
/** A clock that is off by less than this puts nothing in a wrong week. */
const CLOCK_HOURS = 24;

/** Looks at everything that the program rests on, changes nothing, and says of each fault what to do. */
export async function doctor(options: DataOption): Promise<Outcome> {
  const { problems, told } = await withDatabase(options, async (store) => {
    const { checked, problems: unsound } = await store.verify();
    // What lies in a damaged database cannot be relied on.
    if (unsound.length > 0) return { problems: unsound, told: [] };
    const photos = await photosOf(store, photoFolder(options));
    return {
      problems: [...photos.problems, ...(await clockOf(store)), ...(await roomIn(dataFolder(options)))],
      told: [`${checked} revisions read, each as its schema says.`, ...photos.told],
    };
  });
  note([describeDatabase(options), ...told].join('\n'));
  if (problems.length > 0) return faulty(...problems);
  note('Nothing to mend.');
  return done;
}

async function photosOf(store: Store, folder: string) {
  const kept = photosIn(folder);
  const names = await kept.names();
  const problems: Problem[] = [];
  for (const name of names) {
    const bytes = await kept.get(name);
    if (bytes === null || photoName(bytes) !== name)
      problems.push({
        where: { file: join(folder, photoPath(name)) },
        got: 'bytes that are not the photo',
        expected: 'a photo whose SHA-256 is its name',
        fix: 'Take that file from a backup, or remove it: the check that names it stays.',
      });
  }
  const { checks, samples } = await store.loadProgram();
  const named = new Set([...checks, ...samples].flatMap(({ photo }) => photo ?? []));
  const missing = [...named].filter((photo) => !names.includes(photo)).length;
  const unnamed = names.filter((name) => !named.has(name)).length;
  return {
    problems,
    told: [
      `${names.length} photos${unnamed > 0 ? `, ${unnamed} of them named by no check that holds now: they belong to its history` : ''}.`,
      ...(missing > 0
        ? [`${missing} photos that checks name are not here. They may still be on the phones that took them.`]
        : []),
    ],
  };
}

/** The newest revision was written by a clock; one that is ahead of this machine's says that one of the two is wrong. */
async function clockOf(store: Store): Promise<Problem[]> {
  const { lastSequence } = await store.counts();
  const [newest] = await store.changesSince(lastSequence - 1, 1);
  if (newest === undefined) return [];
  const ahead = (Date.parse(newest.at) - Date.now()) / 3_600_000;
  if (ahead < CLOCK_HOURS) return [];
  return [
    {
      where: { file: 'database' },
      got: `a record written ${Math.round(ahead)} hours from now, by ${newest.author}`,
      expected: 'records of before now by the clock of this machine',
      fix: 'Set the clock of this machine, or of the one that wrote it, and look at that record’s day.',
    },
  ];
}

async function roomIn(folder: string): Promise<Problem[]> {
  const { bavail, bsize } = await statfs(folder);
  const free = (bavail * bsize) / 1e9;
  if (free >= ROOM_GB) return [];
  return [
    {
      where: { file: folder },
      got: `${free.toFixed(2)} GB free`,
      expected: `${ROOM_GB} GB or more`,
      fix: 'Make room on that disk, or move the data folder to another.',
    },
  ];
}
