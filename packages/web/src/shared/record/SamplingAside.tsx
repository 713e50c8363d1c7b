/** What the rules of a crop ask to be looked at, beside the form that records it. */
import { canonicalCrop, catalogue, type InfestationRule, percent, rulesFor } from '@duskwatch/core';
import { rateText } from '../../format/number.ts';
import { recordWords } from '../../text/record.ts';
import { useWording } from '../../text/wording.ts';
import { Cited } from '../../ui/Cited.tsx';

export interface OfCrop {
  readonly crop: string;
  readonly growthHabit: string | null;
}

/** The rules that a sample can reach, the preferred first. */
export const samplingRules = ({ crop, growthHabit }: OfCrop, insect: string): readonly InfestationRule[] =>
  rulesFor({ crop: canonicalCrop(crop), insect, growthHabit }).filter((rule) => rule.kind === 'infestation');

/** Words that some rule accepts for what was looked at. */
export const SAMPLED_UNITS: readonly string[] = [
  ...new Set(catalogue.rules.flatMap((rule) => (rule.kind === 'infestation' ? [rule.unit] : []))),
];

export function SamplingAside({ field, insect }: { field: OfCrop; insect: string }) {
  const w = recordWords.sampling;
  const wording = useWording();
  const rules = insect === '' ? [] : samplingRules(field, insect);
  return (
    <section className="practices">
      <h3>{w.title}</h3>
      {rules.length === 0 && <p>{w.none}</p>}
      <ul>
        {rules.map((rule) => {
          const unit = w.units[rule.unit] ?? rule.unit;
          const { units, unitsHigh, places, unitsPerPlace } = rule.examine;
          return (
            <li key={rule.id}>
              <b>{w.look(units, unitsHigh ?? null, unit, places, unitsPerPlace)}</b> {w.sign[rule.sign]}{' '}
              {rule.sign === 'egg-masses' ? w.masses(rateText(rule.share), unit) : w.reached(percent(rule.share), unit)}{' '}
              {rule.region && w.region(wording.region(rule.region))}{' '}
              <small>
                {w.source}: <Cited source={rule.source} standing={rule.standing} />.
              </small>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
