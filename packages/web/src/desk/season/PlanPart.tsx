import type { SeasonView } from '@duskwatch/core';
import { Practices } from '../../shared/record/Practices.tsx';
import { cropName, insectName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { seasonWords } from '../../text/season.ts';
import { useOnPaper } from '../../ui/media.ts';
import { Asks } from './Asks.tsx';
import { Assumptions } from './Assumptions.tsx';
import { InsectPlan } from './InsectPlan.tsx';
import { List } from './List.tsx';
import { Questions } from './Questions.tsx';

/** Which traps hang where, how many and when, and why. */
export function PlanPart({ view }: { view: SeasonView }) {
  const w = seasonWords.plan;
  const insects = [...new Set(view.lines.map(({ insect }) => insect))];
  const chosen = view.written?.insects.length ? view.written.insects : insects;
  const paper = useOnPaper();
  const budget = view.written?.trapBudget ?? null;
  return (
    <>
      <section className="season-asks" aria-labelledby="asks">
        <h2 id="asks">{w.asks}</h2>
        <p className="season-sum">
          <b>{w.lead(view.trapsInAll, view.lines.length)}</b>{' '}
          {budget !== null && view.trapsInAll > budget && w.overBudget(view.trapsInAll, budget)}
          {budget !== null &&
            view.trapsInAll <= budget &&
            view.trapsProposed > view.trapsInAll &&
            w.cut(view.trapsProposed, budget)}
        </p>
        <dl>
          <Ask name={w.insects} said={chosen.map(insectName).join(', ') || w.all} />
          <Ask name={w.crops} said={view.written?.crops.map(cropName).join(', ') || w.all} />
          <Ask name={w.fields} said={fieldNames(view) || w.all} />
          <Ask name={w.checks} said={view.checkWeekdays.map((weekday) => recordWords.weekdays[weekday]).join(', ')} />
        </dl>
        {view.written === null && <p className="absent">{w.proposedAll}</p>}
        <Asks view={view} text={w.edit} />
      </section>
      <Questions view={view} />
      {chosen.map((insect, nth) => (
        <InsectPlan key={insect} view={view} insect={insect} open={nth === 0 || paper} />
      ))}
      <List name={`${seasonWords.parts.plan}, ${view.season}`} {...planList(view)} />
      <Practices acts={['setting-posts', 'handling-lures', 'walking-fields']} only="caution" title={seasonWords.cautions} />
      <Assumptions view={view} />
    </>
  );
}

const Ask = ({ name, said }: { name: string; said: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>{said}</dd>
  </div>
);

const fieldNames = ({ written, fields }: SeasonView): string =>
  written?.fields.map((id) => fields.find(({ fieldId }) => fieldId === id)?.name ?? id).join(', ') ?? '';

function planList(view: SeasonView) {
  const w = seasonWords.plan;
  const head = [w.insects, w.farm, w.area, w.crop, w.design, w.traps, w.hang, w.takeDown, w.checksMade, w.life];
  const rows = view.lines.map((line) => [
    insectName(line.insect),
    line.farm,
    line.fields.map(({ name }) => name).join(' + '),
    [...new Set(line.fields.map(({ crop }) => cropName(crop)))].join(' + '),
    line.design.design,
    line.traps.count,
    line.hang.on,
    line.takeDown.on,
    line.checks,
    line.lureLife.days,
  ]);
  return { head, rows };
}
