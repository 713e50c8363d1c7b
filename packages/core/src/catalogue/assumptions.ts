/** Figures that Duskwatch itself must choose. None is a fact of the trade; each is shown wherever it is used. */
import { WEATHER_FAR_KM } from '../records/weather-source.ts';
import { namedFigures } from './named-figures.ts';
import { COMMON_PRACTICE, OWN_FIGURE } from './sources/sources.ts';
import type { Assumption } from './types.ts';

const figures = {
  silentModerate: {
    value: 0.012,
    unit: {
      en: 'probability that a sound trap in a poor place is as silent',
      es: 'probabilidad de que una trampa sana en un lugar pobre calle tanto',
    },
    why: {
      en: 'From here on a silent trap is doubted. Over a season fewer than one sound trap of fifty then is.',
      es: 'Desde aquí se duda de una trampa que calla. En una temporada se duda así de menos de una trampa sana de cada cincuenta.',
    },
    ...OWN_FIGURE,
  },
  silentStrong: {
    value: 0.005,
    unit: {
      en: 'probability that a sound trap in a poor place is as silent',
      es: 'probabilidad de que una trampa sana en un lugar pobre calle tanto',
    },
    why: {
      en: 'From here on a silent trap tells nothing about its field until somebody has looked at it.',
      es: 'Desde aquí una trampa que calla no dice nada de su parcela hasta que alguien la mire.',
    },
    ...OWN_FIGURE,
  },
  benefitOfDoubt: {
    value: 0.2,
    unit: {
      en: 'probability of nothing since the trap was put right',
      es: 'probabilidad de nada desde que se arregló la trampa',
    },
    why: {
      en: 'A trap that was put right is trusted until it has had a fair chance to catch: about five moths at a middling place.',
      es: 'En una trampa arreglada se confía hasta que haya tenido una oportunidad justa de capturar: unas cinco polillas en un lugar corriente.',
    },
    ...OWN_FIGURE,
  },
  loudTimes: {
    value: 5,
    unit: { en: 'times what other traps lead one to expect', es: 'veces lo que hacen esperar las otras trampas' },
    why: {
      en: 'Good places catch two or three times the mean; five times asks for a look at lure, count and place.',
      es: 'Los lugares buenos capturan dos o tres veces la media; cinco veces pide mirar el atrayente, el conteo y el lugar.',
    },
    ...OWN_FIGURE,
  },
  loudMoths: {
    value: 10,
    unit: { en: 'moths in each of the other traps', es: 'polillas en cada una de las otras trampas' },
    why: {
      en: 'With fewer, stray moths decide what is many times as much.',
      es: 'Con menos, unas pocas polillas sueltas deciden qué es muchas veces más.',
    },
    ...OWN_FIGURE,
  },
  loudChance: {
    value: 0.02,
    unit: {
      en: 'probability that a sound trap in a good place catches as much',
      es: 'probabilidad de que una trampa sana en un lugar bueno capture tanto',
    },
    why: {
      en: 'Few traps or few moths make five times a matter of chance: then nothing is said.',
      es: 'Con pocas trampas o pocas polillas, cinco veces más puede ser azar: entonces no se dice nada.',
    },
    ...OWN_FIGURE,
  },
  visitDispersionK: {
    value: 3,
    unit: { en: 'dispersion k between the visits of one trap', es: 'dispersión k entre las visitas de una trampa' },
    why: {
      en: 'The middle of what is believed before a program has visits of its own. A series of 27 years gives 3.4 to 8 by the level of the catch (Battles et al. 2024, J. Insect Conserv., computed from its open data); other networks scatter more, so the middle lies below.',
      es: 'El centro de lo que se supone antes de que un programa tenga visitas propias. Una serie de 27 años da de 3.4 a 8 según el nivel de la captura (Battles et al. 2024, J. Insect Conserv., calculado de sus datos abiertos); otras redes varían más, por eso el centro queda por debajo.',
    },
    ...OWN_FIGURE,
  },
  visitDispersionLogSd: {
    value: 0.8,
    unit: { en: 'standard deviation of ln k', es: 'desviación típica de ln k' },
    why: {
      en: 'Eight networks of ten are taken to lie between a third of the middle and three times it: 1.1 to 8.4.',
      es: 'Se supone que ocho de cada diez redes están entre un tercio del centro y el triple: de 1.1 a 8.4.',
    },
    ...OWN_FIGURE,
  },
  catchDispersionK: {
    value: 2,
    unit: { en: 'dispersion k between the traps of a field', es: 'dispersión k entre las trampas de una parcela' },
    why: {
      en: 'Trap counts scatter more than chance alone. Until a program has its own estimate, the traps of one field are read as moderately over-dispersed.',
      es: 'Los conteos de las trampas varían más que por puro azar. Mientras un programa no tenga su propia estimación, las trampas de una parcela se leen como moderadamente sobredispersas.',
    },
    ...OWN_FIGURE,
  },
  otherTraps: {
    value: 2,
    unit: {
      en: 'other traps of the insect and design that saw each of the nights',
      es: 'otras trampas del insecto y del diseño que vieron cada una de las noches',
    },
    why: {
      en: 'One neighbour alone cannot say which of the two is odd.',
      es: 'Una sola vecina no puede decir cuál de las dos es la rara.',
    },
    ...OWN_FIGURE,
  },
  placeShape: {
    value: 0.9,
    unit: {
      en: 'shape of a gamma distribution of what traps catch against the mean',
      es: 'forma de una distribución gamma de lo que capturan las trampas frente a la media',
    },
    why: {
      en: 'Places differ: with this shape one trap of ten catches less than about a quarter of the mean, and that is no fault.',
      es: 'Los lugares difieren: con esta forma, una trampa de cada diez captura menos de una cuarta parte de la media, y eso no es una falla.',
    },
    ...OWN_FIGURE,
  },
  dispersionBlocks: {
    value: 6,
    unit: {
      en: 'stretches of the same nights with two or more traps and some catch',
      es: 'tramos de las mismas noches con dos o más trampas y alguna captura',
    },
    why: {
      en: 'Fewer stretches do not show how much traps of one field differ in the same nights.',
      es: 'Menos tramos no muestran cuánto difieren las trampas de una parcela en las mismas noches.',
    },
    ...OWN_FIGURE,
  },
  dispersionSpareCounts: {
    value: 12,
    unit: { en: 'counts beyond one per stretch', es: 'conteos además de uno por tramo' },
    why: {
      en: 'With fewer to spare, the mean of each stretch takes up the scatter that is looked for.',
      es: 'Con menos de sobra, la media de cada tramo absorbe la variación que se busca.',
    },
    ...OWN_FIGURE,
  },
  dispersionMoths: {
    value: 20,
    unit: { en: 'moths', es: 'polillas' },
    why: {
      en: 'Scatter among hardly any moths says nothing about clumping.',
      es: 'La variación entre muy pocas polillas no dice nada de la agrupación.',
    },
    ...OWN_FIGURE,
  },
  nightDispersionK: {
    value: 2,
    unit: { en: 'dispersion k between the nights of one trap', es: 'dispersión k entre las noches de una trampa' },
    why: {
      en: 'A visit tells the sum of its nights. How it may have fallen on them is read as clumped as single nights are: visits of two to four nights show k of 3 to 5, single nights less.',
      es: 'Una revisión dice la suma de sus noches. Cómo pudo repartirse entre ellas se lee tan agrupado como lo son las noches sueltas: las revisiones de dos a cuatro noches muestran k de 3 a 5; las noches sueltas, menos.',
    },
    ...OWN_FIGURE,
  },
  captureLikely: {
    value: 0.5,
    unit: { en: 'probability', es: 'probabilidad' },
    why: {
      en: 'An intense capture hidden in the nights between two visits is taken to have happened once that is more likely than not. Below it the probability is shown, and nothing is dated.',
      es: 'Una captura intensa oculta en las noches entre dos revisiones se da por ocurrida cuando es más probable que no. Por debajo se muestra la probabilidad, y no se fecha nada.',
    },
    ...OWN_FIGURE,
  },
  intervalLevel: {
    value: 0.8,
    unit: { en: 'probability', es: 'probabilidad' },
    why: {
      en: 'The share of belief that the interval of a nightly rate holds: wide enough to be honest, narrow enough to act on.',
      es: 'La confianza que encierra el intervalo de una tasa por noche: amplio para ser honesto, estrecho para poder actuar.',
    },
    ...OWN_FIGURE,
  },
  maxCheckGapDays: {
    value: 8,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'Traps are checked once or twice a week; a trap not seen for longer than this is overdue and its field is out of sight.',
      es: 'Las trampas se revisan una o dos veces por semana; una que no se ha visto en más tiempo está atrasada y su parcela queda fuera de vista.',
    },
    ...COMMON_PRACTICE,
  },
  accumulationNights: {
    value: 7,
    unit: { en: 'nights', es: 'noches' },
    why: {
      en: 'Eggs laid over a week can add up although no single night reaches the threshold.',
      es: 'Los huevos puestos a lo largo de una semana pueden acumularse aunque ninguna noche alcance el umbral.',
    },
    ...OWN_FIGURE,
  },
  accumulationShare: {
    value: 0.6,
    unit: { en: 'share of the threshold', es: 'parte del umbral' },
    why: {
      en: 'Mean catch of the last nights, as a share of the threshold, from which it counts as accumulating below it. The published case of 9, 7, 5, 9, 6, 7, 7 moths against 10 stands at 0.714.',
      es: 'Captura media de las últimas noches, como parte del umbral, a partir de la cual se considera que se acumula por debajo de él. El caso publicado de 9, 7, 5, 9, 6, 7 y 7 polillas frente a 10 da 0.714.',
    },
    ...OWN_FIGURE,
  },
  nearProbability: {
    value: 0.2,
    unit: { en: 'probability', es: 'probabilidad' },
    why: {
      en: 'From this probability that the true rate is above the threshold, the catch is called near it.',
      es: 'Desde esta probabilidad de que la tasa verdadera supere el umbral, se dice que la captura está cerca de él.',
    },
    ...OWN_FIGURE,
  },
  stageOldDays: {
    value: 14,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'A crop moves to another stage within about two weeks: an older observation is used with a caution.',
      es: 'Un cultivo pasa a otra etapa en unas dos semanas: una observación más antigua se usa con una advertencia.',
    },
    ...OWN_FIGURE,
  },
  sampleFreshDays: {
    value: 7,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'Eggs hatch and larvae move within a week: an older sample no longer describes the field.',
      es: 'En una semana los huevos eclosionan y las larvas se mueven: una muestra más antigua ya no describe la parcela.',
    },
    ...OWN_FIGURE,
  },
  weatherFarKm: {
    value: WEATHER_FAR_KM,
    unit: { en: 'km', es: 'km' },
    why: {
      en: 'Weather from farther away than this is taken for a field only where somebody names it for the field.',
      es: 'Un clima de más lejos que esto se toma para una parcela solo si alguien lo nombra para ella.',
    },
    ...OWN_FIGURE,
  },
  maxBridgeDays: {
    value: 3,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'Weather gaps up to this long are bridged and counted; a heat sum over a longer gap is refused.',
      es: 'Los huecos del tiempo hasta este largo se interpolan y se cuentan; con un hueco mayor no se da suma de calor.',
    },
    ...OWN_FIGURE,
  },
  scoutLeadDays: {
    value: 7,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'How far ahead of a predicted event its scouting date is announced, so that it fits into a week of work.',
      es: 'Con cuánta anticipación se anuncia la fecha de muestreo de un evento previsto, para que quepa en una semana de trabajo.',
    },
    ...OWN_FIGURE,
  },
  decideWithinDays: {
    value: 1,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'Once a rule is reached, young larvae soon feed out of reach: the decision is due by the next day.',
      es: 'Alcanzada una regla, las larvas jóvenes pronto comen fuera de alcance: la decisión toca a más tardar al día siguiente.',
    },
    ...OWN_FIGURE,
  },
  nearbyKm: {
    value: 5,
    unit: { en: 'km', es: 'km' },
    why: {
      en: 'A field this close counts as a neighbour where a rule asks what stands nearby; moths fly further, their choice of crop is local.',
      es: 'Una parcela así de cercana cuenta como vecina cuando una regla pregunta qué hay cerca; las polillas vuelan más lejos, pero eligen el cultivo de la zona.',
    },
    ...OWN_FIGURE,
  },
  weatherStaleDays: {
    value: 3,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'With the newest weather older than this, heat is no longer known up to today.',
      es: 'Si el último dato del tiempo es más antiguo que esto, ya no se conoce el calor hasta hoy.',
    },
    ...OWN_FIGURE,
  },
  lookAlikeShare: {
    value: 0.5,
    unit: { en: 'share of all moths in the trap', es: 'parte de todas las polillas de la trampa' },
    why: {
      en: 'With at least this share of other species in a catch, somebody should look again at what was counted as the target.',
      es: 'Con al menos esta parte de otras especies en una captura, conviene volver a mirar lo que se contó como la especie buscada.',
    },
    ...OWN_FIGURE,
  },
  sampleUnits: {
    value: 100,
    unit: { en: 'plants, ears or fruit', es: 'plantas, mazorcas o frutos' },
    why: {
      en: 'Five places of twenty are walked where a rule gives a share and no sample size.',
      es: 'Se recorren cinco sitios de veinte cuando una regla da una proporción y no un tamaño de muestra.',
    },
    ...COMMON_PRACTICE,
  },
  lookAlikeMoths: {
    value: 10,
    unit: { en: 'moths of all species in the trap', es: 'polillas de todas las especies en la trampa' },
    why: {
      en: 'With fewer moths than this in a catch, the share of other species says little.',
      es: 'Con menos polillas que estas en una captura, la parte de otras especies dice poco.',
    },
    ...OWN_FIGURE,
  },
  accumulationMoths: {
    value: 5,
    unit: { en: 'moths per trap', es: 'polillas por trampa' },
    why: {
      en: 'Catches add up only where the threshold, reached every night, would bring at least this many moths to a trap in the window.',
      es: 'Las capturas se acumulan solo donde el umbral, alcanzado cada noche, llevaría al menos estas polillas a una trampa en la ventana.',
    },
    ...OWN_FIGURE,
  },
  nearShare: {
    value: 0.75,
    unit: { en: 'share of the threshold', es: 'parte del umbral' },
    why: {
      en: 'A catch is called near its threshold only from this share of it on, however wide its interval: few nights alone are no reason to walk a field.',
      es: 'Una captura se llama cercana a su umbral solo desde esta parte de él, por amplio que sea su intervalo: pocas noches por sí solas no son motivo para recorrer una parcela.',
    },
    ...OWN_FIGURE,
  },
  larvaeMoths: {
    value: 5,
    unit: { en: 'moths per trap', es: 'polillas por trampa' },
    why: {
      en: 'Fewer moths than this, over the nights whose offspring may still be eggs or larvae, send nobody into a field for them.',
      es: 'Con menos polillas que estas, en las noches cuya descendencia aún puede ser huevo o larva, no se envía a nadie a la parcela por ellas.',
    },
    ...OWN_FIGURE,
  },
  fewTrapNights: {
    value: 4,
    unit: { en: 'trap-nights', es: 'noches-trampa' },
    why: {
      en: 'A rate from fewer trap-nights than this is weak evidence and is marked so.',
      es: 'Una tasa con menos noches-trampa que estas es un indicio débil, y así se marca.',
    },
    ...OWN_FIGURE,
  },
  intervalUnknownDays: {
    value: 3,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'How long a treatment or a decision is taken to hold where neither its label nor the rule gives a figure: the shortest interval of the published table for corn earworm.',
      es: 'Cuánto se da por válido un tratamiento o una decisión cuando ni la etiqueta ni la regla dan una cifra: el intervalo más corto de la tabla publicada para el elotero.',
    },
    ...OWN_FIGURE,
  },
  risingShare: {
    value: 0.5,
    unit: { en: 'share of the threshold', es: 'parte del umbral' },
    why: {
      en: 'A catch that has clearly been rising sends people to look from this share of the rule’s figure on: eggs are laid before the figure is reached.',
      es: 'Una captura que claramente viene subiendo manda a revisar desde esta parte de la cifra de la regla: se ponen huevos antes de alcanzarla.',
    },
    ...OWN_FIGURE,
  },
  betterLookDays: {
    value: 3,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'A high catch and nothing found asks for a better look: eggs laid in the meantime can then be seen.',
      es: 'Una captura alta sin hallar nada pide revisar mejor: para entonces se ven los huevos puestos entretanto.',
    },
    ...OWN_FIGURE,
  },
  scoutWithinDays: {
    value: 2,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'Scouting that is called for now is due before the next usual check, so that what it finds can still be acted on.',
      es: 'Un muestreo que se pide ahora toca antes de la próxima revisión habitual, para que aún se pueda actuar según lo que se halle.',
    },
    ...OWN_FIGURE,
  },
  usualCheckGapDays: {
    value: 7,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'Traps are checked at least once a week: the next visit is due by then while a trap shows no rhythm of its own.',
      es: 'Las trampas se revisan al menos una vez por semana: la próxima visita toca a más tardar entonces mientras una trampa no muestre un ritmo propio.',
    },
    ...COMMON_PRACTICE,
  },
  sampleUnitsFair: {
    value: 25,
    unit: { en: 'plants, ears or fruit', es: 'plantas, mazorcas o frutos' },
    why: {
      en: 'The published inspection of a tomato field takes 20 to 30 plants; a sample of fewer units is only moderate evidence.',
      es: 'La inspección publicada de una parcela de tomate toma de 20 a 30 plantas; una muestra de menos unidades es un indicio solo moderado.',
    },
    ...OWN_FIGURE,
  },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type AssumptionId = keyof typeof figures;

export const ASSUMPTIONS = namedFigures(figures);
