import type { InsectEntry } from '../../types.ts';

/** What a full entry has and this one has not, crop by crop where it depends on the crop. */
export function missing({ insect, models, rules, recognition }: InsectEntry): string[] {
  const on = (what: string, has: (crop: string) => boolean) => {
    const without = insect.hosts.filter((crop) => !has(crop));
    return without.length === 0 ? [] : [`${what}: ${without.join(', ')}`];
  };
  return [
    ...(insect.hostsSource.standing === 'published' ? [] : ['source of its crops']),
    ...(insect.biofix ? [] : ['biofix']),
    ...(insect.lookAlikes.length > 0 ? [] : ['look-alikes']),
    ...(models.length > 0 ? [] : ['model']),
    ...on('rule for a catch', (crop) => rules.some((rule) => rule.kind.startsWith('catch') && rule.crops.includes(crop))),
    ...on('rule for a sample', (crop) => rules.some((rule) => rule.kind === 'infestation' && rule.crops.includes(crop))),
    ...on('where to look', (crop) => recognition.some((place) => place.crops.includes(crop))),
  ];
}
