/** Published rules for the same catch of which one speaks, and how a program chooses among them. */
import { rivalRules } from '../catalogue/index.ts';
import type { ActionRule } from '../catalogue/types.ts';
import type { ProgramSettings } from '../records/schema.ts';
import { speakingFirst } from './rules.ts';

export interface Rivals {
  readonly insect: string;
  readonly crops: readonly string[];
  /** The one that speaks first. */
  readonly rules: readonly ActionRule[];
  /** How the first came to speak: chosen by its name, by the program's region, or as the strictest. */
  readonly by: 'name' | 'region' | 'strictest';
}

/** Every set of rivals in the catalogue, as a program's settings order it. */
export const rivalsFor = (settings: ProgramSettings): Rivals[] =>
  rivalRules().map((set) => {
    const { rules, by } = speakingFirst(settings, set);
    return { insect: set[0]!.insect, crops: set[0]!.crops, rules, by };
  });

/** The settings with a rule chosen by its name, in place of any other of its rivals; null where it has none. */
export function choosingRule(settings: ProgramSettings, ruleId: string): ProgramSettings | null {
  const rivals = rivalRules().find((set) => set.some(({ id }) => id === ruleId));
  if (!rivals) return null;
  const others = (settings.chosenRules ?? []).filter((id) => rivals.every((rule) => rule.id !== id));
  return { ...settings, chosenRules: [...others, ruleId] };
}
