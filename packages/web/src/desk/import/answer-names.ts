/** What the answers to choose from are called. */
import type { SheetQuestion, Wording } from '@duskwatch/core';
import { importWords as w } from '../../text/import.ts';
import { cropName, insectName } from '../../text/names.ts';

export function answerName(ask: SheetQuestion['ask'], answer: string, wording: Wording): string {
  const listed = (names: Readonly<Record<string, string>>) => names[answer] ?? answer;
  switch (ask) {
    case 'word':
      return listed(w.meanings);
    case 'insect':
    case 'insectName':
      return insectName(answer);
    case 'design':
    case 'designName':
      return listed(wording.design);
    case 'crop':
      return cropName(answer);
    case 'condition':
      return listed(wording.condition);
    case 'dateOrder':
      return listed(w.orders);
    case 'figures':
      return listed(w.figures);
    case 'dayMeans':
      return listed(w.shift);
    case 'temperatureUnit':
    case 'precipitationUnit':
      return listed(w.units);
    case 'field':
      return answer === 'each-trap' ? w.eachTrap : answer;
    case 'hungOn':
      return answer === 'first-date' ? w.firstDate : answer;
    default:
      return answer;
  }
}

/** Questions that may be answered in one's own words besides the choices. */
export const isFree = (ask: SheetQuestion['ask']): boolean =>
  ask === 'year' || ask === 'farm' || ask === 'field' || ask === 'hungOn' || ask === 'source' || ask === 'clock';
