import { modelById, SEASON_ASSUMPTIONS, type SeasonLineView, type SeasonView } from '@duskwatch/core';
import { dayTextFrom } from '../../format/day.ts';
import { rateText } from '../../format/number.ts';
import { seasonWords } from '../../text/season.ts';
import { Cited } from '../../ui/Cited.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { areaName } from './names.ts';

/** The reasons of an insect's lines, those alike said once, each with its source. */
export function Why({ lines, view }: { lines: readonly SeasonLineView[]; view: SeasonView }) {
  const w = seasonWords.plan;
  return (
    <Folded title={w.whySummary} className="season-why">
      <dl>
        <Reasons name={w.design} lines={lines} say={(line) => w.designWhy[line.design.why]} source={designSource} />
        <Reasons name={w.traps} lines={lines} say={trapsWhy} />
        <Reasons name={w.traps} lines={lines} say={ruleSaid} source={ruleSource} />
        <Reasons name={w.hang} lines={lines} say={(line) => hangWhy(line, view)} source={hangSource} />
        <Reasons name={w.takeDown} lines={lines} say={takeDownWhy} />
      </dl>
    </Folded>
  );
}

interface Source {
  readonly source: string | null;
  readonly standing: Parameters<typeof Cited>[0]['standing'];
}

function Reasons(props: {
  name: string;
  lines: readonly SeasonLineView[];
  say: (line: SeasonLineView) => string;
  source?: (line: SeasonLineView) => Source | null;
}) {
  const { name, lines, say, source } = props;
  const said = new Map<string, SeasonLineView[]>();
  for (const line of lines) said.set(say(line), [...(said.get(say(line)) ?? []), line]);
  return (
    <div>
      <dt>{name}</dt>
      {[...said].map(([text, own]) => {
        const cited = source?.(own[0]!) ?? null;
        return (
          <dd key={text}>
            {own.length < lines.length && <b>{own.map(areaName).join(', ')}: </b>}
            {text}{' '}
            {cited && (
              <small>
                <Cited {...cited} />
              </small>
            )}
          </dd>
        );
      })}
    </div>
  );
}

const designSource = ({ design }: SeasonLineView): Source | null =>
  design.standing === null || design.source === null ? null : { source: design.source, standing: design.standing };

const ruleSource = ({ rule }: SeasonLineView): Source | null => rule && { source: rule.source, standing: rule.standing };

function hangSource({ hang }: SeasonLineView): Source | null {
  if (hang.basis !== 'heat' && hang.basis !== 'chosen') return null;
  const model = modelById(hang.spread.modelId);
  return model && { source: model.source, standing: model.standing };
}

function trapsWhy({ traps }: SeasonLineView): string {
  const w = seasonWords.plan.trapsWhy;
  return traps.why === 'budget' ? w.budget(traps.proposed) : w[traps.why];
}

function ruleSaid({ rule }: SeasonLineView): string {
  const w = seasonWords.plan;
  return rule ? w.rule(rateText(rule.thresholdPerNight), rule.windowNights) : w.noRule;
}

function takeDownWhy({ takeDown }: SeasonLineView): string {
  const w = seasonWords.plan.takeDownWhy;
  return takeDown.why === 'assumed' ? w.assumed(SEASON_ASSUMPTIONS.seasonDays.value) : w[takeDown.why];
}

function hangWhy({ hang }: SeasonLineView, { today }: SeasonView): string {
  const w = seasonWords.plan;
  switch (hang.basis) {
    case 'heat': {
      const reached = hang.spread.years.filter(({ kind }) => kind === 'reached').length;
      const caution = { 'one-year': w.oneYear(SEASON_ASSUMPTIONS.oneYearMarginDays.value), 'some-years-without': w.someYears };
      const said = w.hangWhy.heat(dayTextFrom(hang.spread.plausible, today), reached, hang.leadDays);
      return hang.caution ? `${said} ${caution[hang.caution]}` : said;
    }
    case 'chosen':
      return w.hangWhy.chosen(dayTextFrom(hang.proposed, today));
    case 'stated':
      return `${w.hangWhy.stated} ${w.noHeat[hang.why]}`;
    case 'unknown':
      return `${w.noHeat[hang.why]} ${w.hangWhy.unknown}`;
  }
}
