import {
  type ActionRule,
  choosingRule,
  citation,
  english,
  type ProgramSettings,
  REGIONS,
  type Rivals,
  regionCalled,
  regionName,
  rivalsFor,
} from '@duskwatch/core';
import { type DataOption, describeDatabase, withDatabase } from '../database.ts';
import { done, faulty, misused, type Outcome, optionProblem } from '../outcome.ts';
import { programOnDay, titleOf } from '../read-program.ts';
import { note, print } from '../terminal.ts';
import { whoWrites } from '../who-writes.ts';

interface RulesOptions extends DataOption {
  readonly region?: string;
  readonly choose?: string;
  readonly byRegion?: boolean;
  readonly json?: boolean;
}

/** Shows how rules are chosen, and first changes it where an option says so. */
export async function rules(folder: string | undefined, options: RulesOptions): Promise<Outcome> {
  const changes = options.region !== undefined || options.choose !== undefined || options.byRegion === true;
  if (changes) {
    if (folder !== undefined)
      return misused(
        optionProblem(
          'folder',
          folder,
          'no folder: what is chosen is written into the database',
          'Leave the folder out, or import it first.',
        ),
      );
    const kept = await choose(options);
    if (kept.exit !== done.exit) return kept;
  }
  const read = await programOnDay(folder, options);
  if ('exit' in read) return read;
  const { settings } = read.program;
  const rivals = rivalsFor(settings);
  if (options.json) print(JSON.stringify({ region: settings.region ?? null, rivals: rivals.map(written) }, null, 2));
  else print([titleOf(read), ...inWords(settings, rivals)].join('\n'));
  return done;
}

async function choose(options: RulesOptions): Promise<Outcome> {
  return withDatabase(options, async (store) => {
    const [held] = await store.current('settings');
    if (!held)
      return faulty(
        optionProblem('--data', describeDatabase(options), 'a program', 'Import one first: duskwatch import FOLDER.'),
      );
    const settings = changed(held.value, options);
    if ('exit' in settings) return settings;
    const imported = await store.importProgram({ settings }, { author: whoWrites(), at: new Date().toISOString() });
    if (!imported.ok) return faulty(...imported.problems);
    if (imported.value.changed > 0) note(`Kept in ${describeDatabase(options)}`);
    return done;
  });
}

/** The settings as the options ask for them, or why they cannot be. */
function changed(settings: ProgramSettings, { region, choose, byRegion }: RulesOptions): ProgramSettings | Outcome {
  let next = byRegion ? { ...settings, chosenRules: [] } : settings;
  if (region !== undefined) {
    const known = regionCalled(region);
    if (known === null && region !== 'none')
      return misused(
        optionProblem('--region', region, `none, or a region of the catalogue: ${regionNames()}`, 'Name one of them, in quotes.'),
      );
    next = { ...next, region: known };
  }
  if (choose !== undefined) {
    const chosen = choosingRule(next, choose);
    if (chosen === null) {
      const ids = rivalsFor(settings).flatMap((set) => set.rules.map(({ id }) => id));
      return misused(optionProblem('--choose', choose, `a rule that has a rival: ${ids.join(', ')}`, 'Name one of them.'));
    }
    next = chosen;
  }
  return next;
}

const regionNames = () =>
  Object.values(REGIONS)
    .map(({ en }) => en)
    .join(', ');

const words = english({ temperature: 'F' });
const MAY = { decide: 'decides', 'send-scouting': 'sends people to look, and the plants decide' } as const;
const BY = { name: 'chosen by name', region: 'of the region', strictest: 'the strictest, as nothing is chosen' } as const;

function inWords(settings: ProgramSettings, rivals: readonly Rivals[]): string[] {
  const region = settings.region ? regionName(settings.region).en : `not chosen (${regionNames()})`;
  return [
    `Region: ${region}`,
    ...rivals.flatMap(({ insect, crops, rules: set, by }) => [
      '',
      `Catch of ${words.insect(insect)} in ${crops.map(words.crop).join(', ')}:`,
      ...set.map(
        (rule, place) => `  ${place === 0 ? 'speaks' : 'beside'}  ${ruleText(rule)}${place === 0 ? ` – ${BY[by]}` : ''}`,
      ),
    ]),
  ];
}

function ruleText(rule: ActionRule): string {
  const figure =
    rule.kind === 'catch-threshold'
      ? `${rule.threshold} a ${rule.per}`
      : rule.kind === 'catch-table'
        ? `from ${rule.tiers[0]!.from} a night`
        : rule.kind;
  const where = rule.region === '' ? 'tied to no region' : words.region(rule.region);
  const source = citation(rule.source) ?? words.standing[rule.standing];
  return `${rule.id}: ${figure}, ${where}; ${MAY[rule.may]}. ${source}`;
}

const written = ({ insect, crops, rules: set, by }: Rivals) => ({
  insect,
  crops,
  by,
  rules: set.map(({ id, region, may, source, standing }) => ({
    id,
    region: region === '' ? null : region,
    may,
    source,
    standing,
  })),
});
