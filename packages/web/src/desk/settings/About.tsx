import { useQuery } from '@tanstack/react-query';
import { version } from '../../../package.json';
import { programQuery, weekQuery } from '../../api/queries.ts';
import { longDay } from '../../format/day.ts';
import { countText } from '../../format/number.ts';
import { settingsWords } from '../../text/settings.ts';
import { NOT_YET, Setting } from '../../ui/Setting.tsx';

/** Which Duskwatch this is, and what the program holds. */
export function About() {
  const w = settingsWords;
  const { data: program } = useQuery(programQuery);
  const { data: week } = useQuery(weekQuery(undefined));
  return (
    <Setting title={w.about.title}>
      <p>
        <b>{w.about.version(version)}</b>. {w.about.licence}
      </p>
      <p className="key">{w.about.safety}</p>
      <dl className="counts" aria-busy={!program || !week}>
        <dt>{w.about.program}</dt>
        <dd>{program?.name ?? NOT_YET}</dd>
        <dt>{w.about.data}</dt>
        <dd>
          {program && week
            ? [
                `${countText(week.fields.length)} ${w.about.fields}`,
                `${countText(program.farms.length)} ${w.about.farms}`,
                `${countText(program.crops.length)} ${w.about.crops}`,
                `${countText(program.insects.length)} ${w.about.insects}`,
              ].join(' · ')
            : NOT_YET}
        </dd>
        <dt>{w.about.countsTo}</dt>
        <dd>{week ? (week.countsTo ? longDay(week.countsTo) : w.about.none) : NOT_YET}</dd>
        <dt>{w.about.weatherTo}</dt>
        <dd>{week ? (week.weatherTo ? longDay(week.weatherTo) : w.about.none) : NOT_YET}</dd>
      </dl>
    </Setting>
  );
}
