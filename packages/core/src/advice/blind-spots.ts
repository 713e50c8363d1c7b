/** What the rules for a field and insect need and nobody can see. */
import { type Findings, isOpen } from './findings.ts';
import type { Evidence } from './types.ts';

/** The reasons not to trust that nothing is due; empty when what is needed can be seen. */
export function blindSpots(findings: Findings): Evidence[] {
  const { caught, rules, heat, field, stage, sample } = findings;
  const all = [...rules.catch, ...rules.infestation, ...rules.heat];
  if (all.length === 0) return [missing('rule', field.crop)];
  if (!all.some((rule) => isOpen(field, rule, stage))) return [];
  const catchMatters = rules.catch.some((rule) => isOpen(field, rule, stage));
  if (!catchMatters) {
    if (sample?.verdict === 'below') return [];
    if (heat.missing && !heat.seen) return [heat.missing];
    if (heat.because.some((item) => item.kind === 'event')) return [];
  }
  if (caught.traps.length === 0) return sample?.verdict === 'below' ? [] : [missing('trap', null)];
  if (caught.designs.length === 0) return [...caught.unusable];
  return catchMatters ? catchBlindSpots(findings) : [];
}

function catchBlindSpots({ caught, noStage }: Findings): Evidence[] {
  const readable = caught.designs.filter((finding) => finding.rule !== null);
  if (readable.length === 0) return caught.designs.map(({ design }) => missing('rule', design));
  if (readable.every((finding) => finding.readsLow)) return readable.flatMap((finding) => finding.because);
  const undecided = readable.find((finding) => finding.reached && finding.stage.kind === 'unknown');
  return undecided ? [noStage, ...undecided.because] : [];
}

function missing(what: 'rule' | 'trap', detail: string | null): Evidence {
  return { kind: 'missing', what, from: null, to: null, detail };
}
