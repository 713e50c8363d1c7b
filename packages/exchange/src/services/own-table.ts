/** A table of weather that a program fetches for itself, at an address or from a folder: of any make that can be read unasked. */
import {
  emptyProgram,
  type Problem,
  type Result,
  refuse,
  type SourceRecord,
  sheetEnglish,
  type WeatherRecord,
} from '@duskwatch/core';
import { applyAnyMatch } from '../sheet/apply-match.ts';
import { proposeMatch } from '../sheet/propose-match.ts';

/** An address with its days in place. */
export const addressFor = (template: string, { from, to }: { readonly from: string; readonly to: string }): string =>
  template.replaceAll('{from}', from).replaceAll('{to}', to);

/**
 * The days of one source in a file. What the file leaves open, such as a unit that no heading names, is refused with the
 * question: what is fetched by itself cannot be asked about.
 */
export async function readOwnTable(
  bytes: Uint8Array,
  file: string,
  source: SourceRecord,
): Promise<Result<readonly WeatherRecord[]>> {
  const looked = await proposeMatch(bytes, file);
  if (!looked.ok) return looked;
  const { match, questions } = looked.value.proposal;
  if (match?.kind !== 'weather') return refuse(wrong(file, 'counts', 'a table of weather', 'Name another file or address.'));
  const open = questions.filter(({ id }) => id !== 'source');
  if (open.length > 0) return { ok: false, problems: open.map((question) => asks(file, sheetEnglish.question(question))) };
  const read = await applyAnyMatch(bytes, { ...match, sourceId: source.sourceId }, emptyProgram(), file);
  if (!read.ok) return read;
  const days = read.value.weather ?? [];
  const stations = [...new Set(days.map(({ sourceId }) => sourceId))];
  if (stations.length <= 1) return { ok: true, value: days.map((day) => ({ ...day, sourceId: source.sourceId })) };
  const own = days.filter(({ sourceId }) => sourceId === source.stationId);
  if (own.length > 0) return { ok: true, value: own.map((day) => ({ ...day, sourceId: source.sourceId })) };
  return refuse(
    wrong(
      file,
      `days of ${stations.slice(0, 5).join(', ')}`,
      'days of one station',
      'Write in the source which of these is its station.',
    ),
  );
}

const wrong = (file: string, got: string, expected: string, fix: string): Problem => ({ where: { file }, got, expected, fix });

const asks = (file: string, question: string): Problem => ({
  where: { file },
  got: question,
  expected: 'a table that leaves nothing open',
  fix: 'Let its headings name the unit (tmin_c, tmax_f) and write its days as YYYY-MM-DD; or import it by hand.',
});
