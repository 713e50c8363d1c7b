/** Has the device keep what a person's places need without signal: the app's files, and the answers they show. */
import type { OwnFieldsView, Person, WeekView } from '@duskwatch/core';
import { getJson } from '../api/client.ts';
import { openKept } from '../phone/shared/kept.ts';
import { registerServiceWorker } from '../phone/shared/register.ts';
import { askForFields } from '../phone/shared/server.ts';

/** Field pages that are kept: those of whoever is sent out. */
const MOST_FIELDS = 30;
/** Pieces of evidence behind verbs that send somebody out. */
const MOST_CELLS = 60;
const PATIENCE_MS = 60_000;

const RECORDS = ['fields', 'traps', 'stages', 'samples', 'treatments', 'decisions'].map((kind) => `/api/records/${kind}`);

/** Registers the worker and lets it fetch, one after the other, what is not for the eye just now. */
export async function keepHere(person: Person): Promise<void> {
  await registerServiceWorker();
  if (!navigator.serviceWorker) return;
  const { active, waiting, installing } = await navigator.serviceWorker.ready;
  // The older version is not given anything to do that would hold it: what the newer one keeps comes with the next page.
  if (waiting || installing) return letTakeOver(waiting);
  active?.postMessage('keep-pages');
  active?.postMessage({ keepAnswers: await answersFor(person) });
  if (person.role === 'scout' || person.role === 'coordinator') await keepRound(person.id);
}

/** The round and what may be sampled, where their own pages look for them. A round under way keeps what it began with. */
async function keepRound(person: string): Promise<void> {
  if (isOfThePhone()) return;
  const kept = await openKept();
  const fetchedMs = Date.now();
  const { pinnedOn, round, scouting } = await askForFields((await kept.get('round')) === undefined);
  await kept.set('person', person);
  if (round?.status === 'fulfilled') await kept.set('view', { view: round.value, pinnedOn, person, fetchedMs });
  if (scouting.status === 'fulfilled') await kept.set('scouting', { view: scouting.value, pinnedOn, person, fetchedMs });
}

const isOfThePhone = () => /^\/(round|scout)$/.test(location.pathname);

/** The round and scouting have their own way of letting a newer version in; everywhere else nothing is typed so soon. */
async function letTakeOver(waiting: ServiceWorker | null): Promise<void> {
  if (isOfThePhone()) return;
  // A round under way, in another window perhaps, is left its version.
  if ((await (await openKept()).get('round')) === undefined) waiting?.postMessage('take-over');
}

async function answersFor({ role }: Person): Promise<readonly string[]> {
  switch (role) {
    case 'reader':
      return ['/api/program', '/api/week'];
    case 'grower':
      return ['/api/program', '/api/own-fields', '/api/traps', ...RECORDS, ...(await ownFields())];
    default:
      return [
        '/api/program',
        '/api/week',
        '/api/traps',
        '/api/questions/open',
        '/api/questions',
        '/api/conflicts',
        '/api/records/answers',
        ...RECORDS,
        ...(await dueFields()),
      ];
  }
}

const fieldPage = (fieldId: string) => `/api/fields/${encodeURIComponent(fieldId)}`;

async function ownFields(): Promise<string[]> {
  const { acting, resting } = await getJson<OwnFieldsView>('/api/own-fields', AbortSignal.timeout(PATIENCE_MS));
  return [...acting, ...resting].slice(0, MOST_FIELDS).map(({ fieldId }) => fieldPage(fieldId));
}

async function dueFields(): Promise<string[]> {
  const { due } = await getJson<WeekView>('/api/week', AbortSignal.timeout(PATIENCE_MS));
  const cells = [...due.decisions, ...due.scouting];
  const fields = new Set(cells.map(({ fieldId }) => fieldId));
  return [
    ...[...fields].slice(0, MOST_FIELDS).map(fieldPage),
    ...cells
      .slice(0, MOST_CELLS)
      .map(({ fieldId, insect }) => `/api/advice/${encodeURIComponent(fieldId)}/${encodeURIComponent(insect)}`),
  ];
}
