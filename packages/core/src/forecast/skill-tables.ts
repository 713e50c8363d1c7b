/** Skill of forecasts as tables in Markdown. */
import { HINDCAST_SETS, type HindcastCase, type HindcastSet, type HindcastSkill, skillOf } from './hindcast.ts';

const SAID: { readonly [K in HindcastSet]: (years: string) => string } = {
  'earlier-years': (years) => `the years before (as in use; ${years} of them)`,
  'other-years': (years) => `all other years (leave one out; ${years} of them)`,
  normals: (years) => `monthly normals (means of the ${years} other years; no day of an earlier year known)`,
  'recent-days': () => 'the pace of the last 14 days (in use where neither past years nor normals are known)',
};
const HEAD = '| site | days ahead | cases | held before | width before | held now | width now | median error | median bias |';
const RULE = '|---|--:|--:|--:|--:|--:|--:|--:|--:|';

export interface SiteCases {
  readonly site: string;
  readonly cases: readonly HindcastCase[];
}

/** One table for each set that has cases, with the sites in the order given. */
export function skillTables(sites: readonly SiteCases[]): string {
  const skills = sites.flatMap(({ site, cases }) => skillOf(cases).map((skill) => ({ site, skill })));
  return HINDCAST_SETS.flatMap((set) => {
    const rows = skills.filter(({ skill }) => skill.set === set).map(({ site, skill }) => rowOf(site, skill));
    const title = `### The rest of the season: ${SAID[set](yearsIn(sites, set))}`;
    return rows.length === 0 ? [] : [[title, '', HEAD, RULE, ...rows].join('\n')];
  }).join('\n\n');
}

function yearsIn(sites: readonly SiteCases[], set: HindcastSet): string {
  const years = sites.flatMap(({ cases }) => cases.filter((one) => one.set === set).map((one) => one.years));
  const fewest = years.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const most = years.reduce((a, b) => Math.max(a, b), 0);
  return fewest === most ? `${most}` : `${fewest} to ${most}`;
}

function rowOf(site: string, { leadDays, cases, calibrated, ordered, medianErrorDays, medianBiasDays }: HindcastSkill): string {
  const share = (one: HindcastSkill['ordered']) => (one === null ? '–' : `${Math.round(100 * one.coverage)} %`);
  const width = (one: HindcastSkill['ordered']) => (one === null ? '–' : Number.isFinite(one.widthDays) ? one.widthDays : 'open');
  const bias = medianBiasDays > 0 ? `+${medianBiasDays}` : medianBiasDays;
  const before = [share(ordered), width(ordered)];
  const now = [share(calibrated), width(calibrated)];
  return `| ${[site, leadDays, cases, ...before, ...now, medianErrorDays, bias].join(' | ')} |`;
}
