import { bulletinHtml, bulletinIn, bulletinText, bulletinView, day, type Language, prepare } from '@duskwatch/core';
import { done, type Outcome } from '../outcome.ts';
import { programOnDay, type ReadOptions } from '../read-program.ts';
import { print } from '../terminal.ts';

interface BulletinOptions extends ReadOptions {
  readonly language: Language;
  readonly html?: boolean;
}

/** The draft of the week's bulletin, as the app makes it, on the way to wherever it is written. */
export async function bulletin(folder: string | undefined, options: BulletinOptions): Promise<Outcome> {
  const read = await programOnDay(folder, options);
  if ('exit' in read) return read;
  const view = bulletinView(prepare(read.program, { on: day(read.on) }));
  const draft = bulletinIn(options.language, view);
  print(options.json ? JSON.stringify(view, null, 2) : (options.html ? bulletinHtml(draft) : bulletinText(draft)).trimEnd());
  return done;
}
