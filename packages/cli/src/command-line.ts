import { HEAT_CUTOFFS, HEAT_METHODS, LABEL_GRID_IDS } from '@duskwatch/core';
import { Command, Option } from 'commander';
import { EXIT, type Outcome } from './outcome.ts';
import { formatProblems } from './report.ts';

const EXIT_CODES = `
Exit codes:
  ${EXIT.done}  done
  ${EXIT.problems}  problems in the data: each is listed on stderr, and nothing was changed
  ${EXIT.usage}  wrong usage
  ${EXIT.internal}  a fault in Duskwatch

The data lies in data/duskwatch.sqlite in the checkout, in the folder that --data or DUSKWATCH_DATA names, or in
the PostgreSQL database that DATABASE_URL names.`;

const DATA = ['--data <dir>', 'folder of the database (default: DUSKWATCH_DATA, else data/ in the checkout)'] as const;
const JSON_OUTPUT = ['--json', 'JSON on stdout; problems as a JSON array on stderr'] as const;

/** Every command and its options. What a command does is loaded only when it is the one that was called. */
export function commandLine(): Command {
  const program = new Command('duskwatch')
    .description('From moth counts and weather to what to do in which field by when.')
    .version('0.1.0')
    .exitOverride()
    .showHelpAfterError('(duskwatch --help, or duskwatch help COMMAND, tells more)')
    .addHelpText('after', EXIT_CODES);

  program
    .command('advise')
    .description('what to do in each field about each insect, by when, and why')
    .argument('[folder]', 'program folder to read (default: the database)')
    .option('--on <date>', "the day to stand on, YYYY-MM-DD (default: the program's pinned day, else today)")
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText('after', examples('duskwatch advise', 'duskwatch advise my-program --on 2026-07-15', 'duskwatch advise --json'))
    .action(run(async () => (await import('./commands/advise.ts')).advise));

  program
    .command('heat')
    .description('degree-days day by day from a weather file')
    .argument('<weather.csv>', 'weather.csv of a program folder, daily station records of NOAA, or a date with its tmin and tmax')
    .requiredOption('--method <method>', HEAT_METHODS.join(', '))
    .option('--cutoff <cutoff>', `${HEAT_CUTOFFS.join(', ')} (default: horizontal with --upper, else none)`)
    .requiredOption('--lower <temperature>', 'lower threshold with its unit, as 50F or 10C')
    .option('--upper <temperature>', 'upper threshold, in the same unit')
    .option('--from <date>', 'first day, YYYY-MM-DD (default: first day of the file)')
    .option('--to <date>', 'last day, YYYY-MM-DD (default: last day of the file)')
    .option('--source <id>', 'which weather source, where the file holds several')
    .addOption(stationUnits())
    .option('--bridge <days>', 'longest run of missing days to interpolate; 0 for none')
    .option(...JSON_OUTPUT)
    .addHelpText(
      'after',
      examples(
        'duskwatch heat weather.csv --method single-sine --cutoff horizontal --lower 50F --upper 88F --from 2026-05-01 --to 2026-07-15',
      ),
    )
    .action(run(async () => (await import('./commands/heat.ts')).heat));

  program
    .command('learn')
    .description('what the records of a season teach: timing, what advice led to, traps and lures compared, thresholds suggested')
    .argument('[folder]', 'program folder to read (default: the database)')
    .option('--on <date>', "the season that holds this day, as known on it (default: the program's pinned day, else today)")
    .option('--prices <prices>', 'for the cost of a decision: a currency, then any of trap, lure, visit and sample')
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText(
      'after',
      examples('duskwatch learn', 'duskwatch learn my-program --prices "USD trap=30 lure=6 visit=2.50 sample=8" --json'),
    )
    .action(run(async () => (await import('./commands/learn.ts')).learn));

  program
    .command('season')
    .description('the plan of a season: traps and when to hang them, lures to order, what it costs, and what became of it')
    .argument('[folder]', 'program folder to read (default: the database)')
    .option('--year <year>', 'year in which the season begins (default: the running season where it is planned, else the next)')
    .option('--on <date>', "the day to stand on, YYYY-MM-DD (default: the program's pinned day, else today)")
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText('after', examples('duskwatch season', 'duskwatch season my-program --year 2027 --json'))
    .action(run(async () => (await import('./commands/season.ts')).season));

  program
    .command('questions')
    .description('records of a season that somebody should look at again; nothing is changed')
    .argument('[folder]', 'program folder to read (default: the database)')
    .option('--on <date>', "the season that holds this day, as known on it (default: the program's pinned day, else today)")
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText('after', examples('duskwatch questions', 'duskwatch questions my-program --on 2025-11-01 --json'))
    .action(run(async () => (await import('./commands/questions.ts')).questions));

  program
    .command('scouting')
    .description('fields and insects to scout, the sampling plan for one of them, or sheets to print')
    .argument('[folder]', 'program folder to read (default: the database)')
    .option('--on <date>', "the day to stand on, YYYY-MM-DD (default: the program's pinned day, else today)")
    .option('--field <id>', 'the plan for this field')
    .option('--insect <id>', 'and this insect')
    .option('--pdf <file>', 'write sheets to print; it must not exist yet. Without a field: all that is to be scouted now')
    .addOption(new Option('--paper <size>', 'paper of the sheets').choices(['a4', 'letter']).default('a4'))
    .addOption(new Option('--language <language>', 'of the plan and the sheets').choices(['en', 'es']).default('en'))
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText(
      'after',
      examples(
        'duskwatch scouting',
        'duskwatch scouting my-program --field cedar-2 --insect ostrinia-nubilalis',
        'duskwatch scouting --pdf sheets.pdf --paper letter',
      ),
    )
    .action(run(async () => (await import('./commands/scouting.ts')).scouting));

  program
    .command('bulletin')
    .description("the draft of the week's bulletin for growers: no figure of fewer than three farms, and no place")
    .argument('[folder]', 'program folder to read (default: the database)')
    .option('--on <date>', "the last of its seven days, YYYY-MM-DD (default: the program's pinned day, else today)")
    .addOption(new Option('--language <language>', 'of the bulletin').choices(['en', 'es']).default('en'))
    .option('--html', 'as a page of HTML for mail, in place of plain text')
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText('after', examples('duskwatch bulletin', 'duskwatch bulletin my-program --language es --html'))
    .action(run(async () => (await import('./commands/bulletin.ts')).bulletin));

  program
    .command('flights')
    .description('how many flights each catch shows, how far each has come, and when the next events are due')
    .argument('[folder]', 'program folder to read (default: the database)')
    .option('--on <date>', "the day to stand on, YYYY-MM-DD (default: the program's pinned day, else today)")
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText('after', examples('duskwatch flights', 'duskwatch flights my-program --on 2026-07-15 --json'))
    .action(run(async () => (await import('./commands/flights.ts')).flights));

  program
    .command('hindcast')
    .description('how far forecasts of events would have been right in the past years of a weather file')
    .argument('<weather.csv>', 'weather.csv of a program folder, daily station records of NOAA, or a date with its tmin and tmax')
    .option('--source <id>', 'which weather source, where the file holds several')
    .addOption(stationUnits())
    .option(...JSON_OUTPUT)
    .addHelpText('after', examples('duskwatch hindcast weather.csv'))
    .action(run(async () => (await import('./commands/hindcast.ts')).hindcast));

  program
    .command('rules')
    .description("the program's region, and which of the published rules for the same catch speaks there; or choose them")
    .argument('[folder]', 'program folder to read (default: the database); nothing is chosen in a folder')
    .option('--region <name>', 'choose the region of the program; none: no region')
    .option('--choose <rule>', 'let this rule speak, whatever the region')
    .option('--by-region', 'let the region alone say which rule speaks')
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText(
      'after',
      examples(
        'duskwatch rules',
        'duskwatch rules --region Maine',
        'duskwatch rules --choose sweet-corn-fall-armyworm-catch --json',
      ),
    )
    .action(run(async () => (await import('./commands/rules.ts')).rules));

  const document = (name: string, description: string, file: string) =>
    program
      .command(name)
      .description(description)
      .argument('[folder]', 'program folder to read (default: the database)')
      .requiredOption('--out <file>', `${file} to write; it must not exist yet`)
      .option('--language <language>', 'en or es', 'en')
      .option('--on <date>', "the day to stand on, YYYY-MM-DD (default: the program's pinned day, else today)")
      .option(...DATA);

  document('labels', 'sheets of trap labels whose codes open the trap’s check on a phone', 'PDF file')
    .requiredOption('--grid <grid>', `kind of sheet: ${LABEL_GRID_IDS.join(', ')}`)
    .requiredOption('--origin <url>', 'where phones reach the app, as https://moths.example')
    .option('--start <n>', 'first label to print on, counted along the rows', '1')
    .option('--contact <text>', 'how to reach the coordinator', '')
    .option('--trap <id...>', 'these traps alone')
    .addOption(lengths())
    .option('--outlines', 'draw the labels’ edges, for a trial print on plain paper')
    .addHelpText(
      'after',
      examples(
        'duskwatch labels my-program --grid a4-3x7 --origin https://moths.example --contact "Ida, 555 0100" --out labels.pdf',
      ),
    )
    .action(run(async () => (await import('./commands/documents.ts')).labels));

  document('checklist', 'what to take along and to beware of when traps are hung, design by design', 'PDF file')
    .option('--design <design>', 'one design alone (default: those that hang)')
    .addOption(new Option('--paper <paper>').choices(['A4', 'Letter']).default('A4'))
    .addOption(lengths())
    .addHelpText('after', examples('duskwatch checklist my-program --design mesh-cone --out hanging.pdf'))
    .action(run(async () => (await import('./commands/documents.ts')).checklist));

  document('calendar', 'what is due as a calendar file (iCalendar)', 'ICS file')
    .addHelpText('after', examples('duskwatch calendar my-program --out traps.ics'))
    .action(run(async () => (await import('./commands/documents.ts')).calendar));

  program
    .command('import')
    .description('bring a program folder, one of its tables, a sheet of any layout or a weather file into the database')
    .argument('<path>', 'folder with a datapackage.json or CSV tables, or a CSV, TSV, XLSX, XLS or ODS file')
    .option('--propose', 'say how a sheet would be read and what it leaves open, and import nothing')
    .option('--answer <id=answer...>', 'answer a question that a sheet leaves open')
    .option('--out <file>', 'write the proposed match, with the answers so far, and import nothing')
    .option('--match <file>', 'import a sheet by this match, as --out wrote it')
    .option('--sheet <name>', 'which sheet of a workbook; without it all that hold counts')
    .addOption(stationUnits())
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText(
      'after',
      examples(
        'duskwatch import my-program',
        'duskwatch import counts.xlsx --propose',
        'duskwatch import counts.xlsx --answer insect=helicoverpa-zea --answer dateOrder=mdy --out match.json',
        'duskwatch import counts.xlsx --match match.json',
      ),
    )
    .action(run(async () => (await import('./commands/import.ts')).importPath));

  program
    .command('export')
    .description('write the program as a folder of CSV tables, a Frictionless Data Package')
    .argument('<folder>', 'a new or empty folder')
    .option(...DATA)
    .addHelpText('after', examples('duskwatch export my-program'))
    .action(run(async () => (await import('./commands/export.ts')).exportFolder));

  program
    .command('serve')
    .description('serve the app and its API')
    .option('--port <port>', 'port to listen on (default: 4180, or the next free one)')
    .option('--host <host>', 'address to listen on; any but this machine needs --accounts', '127.0.0.1')
    .option('--accounts', 'people sign in; the first becomes coordinator with a code that is printed here')
    .option('--origin <url>', 'where people reach it when a proxy with https stands in front, as https://moths.example')
    .option('--invite-coordinator', 'print a link for one more coordinator, when nobody who is one can sign in')
    .option('--map-origin <url...>', 'where the map may fetch a base map from, as https://tiles.example')
    .option('--driving-times <url>', 'a routing service (OSRM) that rounds may ask; it learns where the stations are')
    .option('--demo', 'begin with the invented demo, in a database of its own, as long as the program is empty')
    .option(...DATA)
    .addHelpText(
      'after',
      examples(
        'duskwatch serve',
        'duskwatch serve --port 8080 --data /srv/duskwatch',
        'duskwatch serve --accounts --host 0.0.0.0 --origin https://moths.example',
      ),
    )
    .action(run(async () => (await import('./commands/serve.ts')).serve));

  program
    .command('demo')
    .description('load the invented demo program into an empty database, or write it as a folder')
    .option('--folder <dir>', 'write it as a program folder instead')
    .option('--typed-sheet <file>', 'write checks as somebody mistyped them, to try an import that is refused')
    .option(...DATA)
    .addHelpText(
      'after',
      examples('duskwatch demo', 'duskwatch demo --folder demo-program', 'duskwatch demo --typed-sheet checks.csv'),
    )
    .action(run(async () => (await import('./commands/demo.ts')).demo));

  program
    .command('backup')
    .description('copy database and photos, while they are in use, into one new folder, and check the copy')
    .argument('<folder>', 'folder to make; it must not exist yet')
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText('after', examples('duskwatch backup duskwatch-2026-07-15'))
    .action(run(async () => (await import('./commands/backup.ts')).backup));

  program
    .command('verify')
    .description('bring a backup back into a folder that is cleared away again, to see that it can be')
    .argument('<backup>', 'folder that a backup made, or the SQLite file of an older one')
    .option(...JSON_OUTPUT)
    .addHelpText('after', examples('duskwatch verify duskwatch-2026-07-15'))
    .action(run(async () => (await import('./commands/verify.ts')).verify));

  program
    .command('doctor')
    .description('look at database, photos, clocks and room on the disk; nothing is changed')
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText('after', examples('duskwatch doctor', 'duskwatch doctor --data restored'))
    .action(run(async () => (await import('./commands/doctor.ts')).doctor));

  program
    .command('restore')
    .description('check a backup, and bring its database and photos into a data folder that holds no database')
    .argument('<backup>', 'folder that a backup made, or the SQLite file of an older one')
    .option(...JSON_OUTPUT)
    .option(...DATA)
    .addHelpText('after', examples('duskwatch restore duskwatch-2026-07-15 --data restored'))
    .action(run(async () => (await import('./commands/restore.ts')).restore));

  return program;
}

const lengths = () => new Option('--length <unit>', 'unit of heights').choices(['m', 'ft']).default('m');

/** The file itself does not say in which units it was ordered; where its figures do, the option can be left out. */
const stationUnits = () =>
  new Option(
    '--units <units>',
    'of a NOAA file: standard (°F, inches), metric (°C, mm) or tenths (of °C and mm), where its figures leave it open',
  ).choices(['standard', 'metric', 'tenths']);

/** Commander's call of a command: its arguments, its options, the command itself. */
function run<A extends unknown[]>(load: () => Promise<(...args: A) => Promise<Outcome>>) {
  return async (...args: [...A, Command]) => {
    const command = args.pop() as Command;
    const outcome = await (await load())(...(args as unknown as A));
    process.exitCode = outcome.exit;
    if (outcome.exit !== EXIT.done) process.stderr.write(formatProblems(outcome.problems, command.opts().json === true));
  };
}

function examples(...lines: readonly string[]): string {
  return `\nExamples:\n${lines.map((line) => `  ${line}`).join('\n')}`;
}
