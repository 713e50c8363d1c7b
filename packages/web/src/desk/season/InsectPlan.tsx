import type { SeasonLineView, SeasonView } from '@duskwatch/core';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { Folded } from '../../ui/Folded.tsx';
import { AreaTable } from './AreaTable.tsx';
import { Decide } from './Decide.tsx';
import { Flights } from './Flights.tsx';
import { Why } from './Why.tsx';

/** One insect: what is decided for it everywhere, when its flight came before, and each area. */
export function InsectPlan({ view, insect, open }: { view: SeasonView; insect: string; open: boolean }) {
  const w = seasonWords.plan;
  const lines = view.lines.filter((line) => line.insect === insect);
  const notHosts = view.notHosts.find((each) => each.insect === insect)?.fields ?? 0;
  const [first] = lines;
  return (
    <Folded
      open={open}
      className="insect-plan"
      title={
        <>
          <h2>{insectName(insect)}</h2>
          <span>
            {first &&
              w.lead(
                lines.reduce((sum, { traps }) => sum + traps.count, 0),
                lines.length,
              )}
          </span>
        </>
      }
    >
      {first ? (
        <>
          <Decide view={view} insect={insect} line={first} />
          {groupByFlights(lines).map((group) => (
            <Flights
              key={group[0]!.id}
              line={group[0]!}
              areas={group.length === lines.length ? null : group}
              today={view.today}
            />
          ))}
          <AreaTable view={view} lines={lines} />
          <Why lines={lines} view={view} />
        </>
      ) : (
        <p className="absent">{w.nothing}</p>
      )}
      {notHosts > 0 && <p className="absent">{w.notHosts(notHosts)}</p>}
    </Folded>
  );
}

/** Areas with the same weather and model share one drawing. */
function groupByFlights(lines: readonly SeasonLineView[]): SeasonLineView[][] {
  const groups = new Map<string, SeasonLineView[]>();
  for (const line of lines) {
    const key = JSON.stringify([line.flights, line.hang.basis, line.hang.on]);
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups.values()];
}
