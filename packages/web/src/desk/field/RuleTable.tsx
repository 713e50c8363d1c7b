import { fromCelsius, type RuleShown, type TemperatureUnit } from '@duskwatch/core';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { percentText, rateText } from '../../format/number.ts';
import { VerbMark } from '../../shared/advice/VerbMark.tsx';
import { fieldPageWords } from '../../text/field-page.ts';
import { sampleKind, stageName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { Cited } from '../../ui/Cited.tsx';
import { BareTable } from '../../ui/table/BareTable.tsx';

const w = fieldPageWords.rule;

/** The rule in use as its own small table, with the step in force marked. */
export function RuleTable({ rule, crop }: { rule: RuleShown; crop: string }) {
  const wording = useWording();
  const [unit] = useTemperatureUnit();
  return (
    <>
      <p>{aboutRule(rule, crop, wording)}</p>
      {rule.steps.length > 0 && (
        <BareTable caption={w.title} className="steps">
          <thead>
            <tr>
              <th scope="col">{w.from}</th>
              <th scope="col">{w.asks}</th>
            </tr>
          </thead>
          <tbody>
            {rule.steps.map((step) => (
              <tr key={step.fromPerNight} className={step.inForce ? 'in-force' : undefined}>
                <td>{spanText(step)}</td>
                <td>
                  {step.intervalDays === null ? (rule.may === 'decide' ? w.decide : w.scout) : w.every(step.intervalDays)}
                  {step.inForce && ` · ${w.inForce}`}
                </td>
              </tr>
            ))}
          </tbody>
        </BareTable>
      )}
      {rule.sample && <p>{w.share(percentText(rule.sample.share), rule.sample.examine, sampleKind(rule.sample.unit))}</p>}
      <ul className="rule-notes">
        {rule.weather.map((each) => (
          <li key={`${each.when}|${each.temperatureC}`}>{weatherText(each, unit)}</li>
        ))}
        {rule.harvestStopDays !== null && <li>{w.harvestStop(rule.harvestStopDays)}</li>}
      </ul>
      {rule.source !== '' && (
        <p className="basis">
          <Cited source={rule.source} standing={rule.standing} />
        </p>
      )}
    </>
  );
}

function spanText({ fromPerNight, belowPerNight, per, figure }: RuleShown['steps'][number]): string {
  const said =
    belowPerNight === null ? w.over(rateText(fromPerNight)) : w.between(rateText(fromPerNight), rateText(belowPerNight));
  return per === 'week' ? `${said} (${w.ofWeek(rateText(figure))})` : said;
}

function weatherText(
  { when, temperatureC, days, addDays, applied }: RuleShown['weather'][number],
  unit: TemperatureUnit,
): string {
  const degrees = `${Math.round(fromCelsius(temperatureC, unit))} °${unit}`;
  const said = when === 'maxima-below' ? w.weather.longer(addDays, days, degrees) : w.weather.shorter(-addDays, days, degrees);
  return `${said}: ${applied === null ? w.weather.unknown : applied ? w.weather.now : w.weather.notNow}`;
}

/** What is held against which figure, where it was made, and at which stages it holds. */
function aboutRule(rule: RuleShown, crop: string, wording: ReturnType<typeof useWording>): string {
  const what = rule.sample
    ? w.plants(sampleKind(rule.sample.unit))
    : rule.design === null
      ? w.anyDesign
      : w.catchKind(wording.design[rule.design]);
  return [
    `${what}.`,
    ...(rule.stages.length > 0 ? [w.stages(rule.stages.map((stage) => stageName(crop, stage)).join(', '))] : []),
    ...(rule.region === '' ? [] : [w.region(wording.region(rule.region))]),
  ].join(' ');
}

/** The rules that do not speak here, each with what it would say of what is known now. */
export function OtherRules({ rules, crop }: { rules: readonly RuleShown[]; crop: string }) {
  const wording = useWording();
  return (
    <ul className="other-rules">
      {rules.map((rule) => (
        <li key={rule.ruleId}>
          <span>
            {aboutRule(rule, crop, wording)} <small>{figureText(rule)}</small>
          </span>
          {rule.says === null ? (
            <small>{w.silent}</small>
          ) : (
            <span className={`says verb-${rule.says}`}>
              <VerbMark verb={rule.says} /> <b className="verb-word">{wording.verb[rule.says]}</b>
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}

function figureText({ steps, sample }: RuleShown): string {
  const [first] = steps;
  if (sample) return w.share(percentText(sample.share), sample.examine, sampleKind(sample.unit));
  return first ? spanText({ ...first, belowPerNight: null }) : '';
}
