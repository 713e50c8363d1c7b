/** What a scout looks for on a unit of a sample, put together from where each stage of the insect is found. */
import { catalogue } from './catalogue.ts';
import type { InfestationRule, LocalText, Recognition } from './types.ts';

type Unit = InfestationRule['unit'];

const STAGE: Readonly<Record<Recognition['stage'], LocalText>> = {
  egg: { en: 'eggs', es: 'huevos' },
  'small-larva': { en: 'small larvae', es: 'larvas pequeñas' },
  'large-larva': { en: 'large larvae', es: 'larvas grandes' },
  larva: { en: 'larvae', es: 'larvas' },
};

const ONE: Readonly<Record<Unit, LocalText>> = {
  plants: { en: 'plant', es: 'la planta' },
  ears: { en: 'ear', es: 'la mazorca' },
  fruit: { en: 'fruit', es: 'el fruto' },
};

/** How a sign is counted; on `infested` units any stage that is found counts. */
const counts = (sign: InfestationRule['sign'], unit: Unit): LocalText => {
  const { en, es } = ONE[unit];
  switch (sign) {
    case 'eggs':
      return { en: `A ${en} with an egg counts.`, es: `Cuenta ${es} que tenga un huevo.` };
    case 'egg-masses':
      return { en: `Count the egg masses on each ${en}.`, es: `Cuente las masas de huevos; ${es} puede tener varias.` };
    case 'damaged':
      return { en: `A ${en} with damage counts.`, es: `Cuenta ${es} que tenga daño.` };
    case 'infested':
      return { en: `${en === 'ear' ? 'An' : 'A'} ${en} with any of these counts.`, es: `Cuenta ${es} que tenga algo de esto.` };
  }
};

export interface LookFor {
  readonly text: LocalText;
  /** Where the places are from, each once. */
  readonly source: string;
}

/** Null where the catalogue does not say where the insect is found on such a unit of the crop. */
export function lookFor(insect: string, crop: string, unit: string): LookFor | null {
  const places = catalogue.recognition.filter(
    (place) => place.insect === insect && place.unit === unit && place.crops.includes(crop),
  );
  if (places.length === 0) return null;
  const rule = catalogue.rules.find(
    (each) => each.kind === 'infestation' && each.insect === insect && each.unit === unit && each.crops.includes(crop),
  );
  const counted = counts(rule?.kind === 'infestation' ? rule.sign : 'infested', places[0]!.unit);
  const said = (language: keyof LocalText) =>
    `${capital(places.map(({ stage, where }) => `${STAGE[stage][language]} ${where[language]}`).join('; '))}. ${counted[language]}`;
  return {
    text: { en: said('en'), es: said('es') },
    source: [...new Set(places.map(({ source }) => source))].join('; '),
  };
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
