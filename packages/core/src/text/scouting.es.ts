import { practicesFor } from '../catalogue/look-up.ts';
import { countsInsects } from '../scouting/plan-for.ts';
import { fine, percent } from './figures.ts';
import type { Sampled, SampledUnit, ScoutingWording } from './scouting-types.ts';

const UNITS: Readonly<Record<SampledUnit, readonly [string, string]>> = {
  plants: ['planta', 'plantas'],
  ears: ['mazorca', 'mazorcas'],
  fruit: ['fruto', 'frutos'],
};
const masculine = (unit: SampledUnit) => unit === 'fruit';
const marked = ({ unit, sign }: Sampled, many = true): string => {
  const ending = `${masculine(unit) ? 'o' : 'a'}${many ? 's' : ''}`;
  return { infested: `infestad${ending}`, eggs: 'con huevos', damaged: `dañad${ending}`, 'egg-masses': 'masas de huevos' }[sign];
};

const units = (n: number, unit: SampledUnit) => `${n} ${UNITS[unit][n === 1 ? 0 : 1]}`;
const found = (total: number, sampled: Sampled) =>
  countsInsects(sampled) ? `${total} ${total === 1 ? 'masa' : 'masas'} de huevos` : `${total} ${marked(sampled, total !== 1)}`;
const spoken = (text: string) => text.replace('under ', 'menos de ').replace('over ', 'más de ');
/** Una proporción exacta conserva sus cifras: 2.5 % no es 3 %. */
const exactShare = (share: number) => spoken(share < 0.1 && share > 0 ? `${fine(share * 100)} %` : percent(share));
const level = (mean: number, sampled: Sampled) =>
  countsInsects(sampled)
    ? `1 masa de huevos en ${spoken(fine(1 / mean))} ${UNITS[sampled.unit][1]}`
    : `${exactShare(mean)} de ${UNITS[sampled.unit][1]} ${marked(sampled)}`;
const figure: ScoutingWording['figure'] = (plan) => {
  const text = level(plan.threshold, plan);
  return plan.thresholdHigh === null ? text : text.replace(' %', `–${Math.round(plan.thresholdHigh * 100)} %`);
};
/** Dos niveles de una clase, con la unidad una sola vez. */
const between = (low: number, high: number, sampled: Sampled) =>
  countsInsects(sampled)
    ? `1 masa de huevos en ${spoken(fine(1 / low))} y 1 en ${spoken(fine(1 / high))} ${UNITS[sampled.unit][1]}`
    : `${exactShare(low)} y ${level(high, sampled)}`;
const inFields = (probability: number) => {
  const of100 = Math.round(probability * 100);
  return of100 === 0 ? 'en menos de 1 de cada 100 parcelas así' : `en ${of100} de cada 100 parcelas así`;
};
const upper = (text: string) => `${text[0]!.toUpperCase()}${text.slice(1)}`;

export const scoutingEs: ScoutingWording = {
  units,
  unitName: (unit) => UNITS[unit][1],
  marked: (sign) =>
    ({ infested: 'con infestación', eggs: 'con huevos', damaged: 'con daño', 'egg-masses': 'masas de huevos' })[sign],
  found,
  level,
  figure,
  counts: (sampled) => {
    const { unit, sign } = sampled;
    const article = masculine(unit) ? 'Un' : 'Una';
    return sign === 'egg-masses'
      ? `Anote cuántas masas de huevos hay en cada una de las ${UNITS[unit][1]}, también ninguna.`
      : `${article} ${UNITS[unit][0]} está ${marked(sampled, false)} o no lo está: no importa cuántos insectos tenga.`;
  },
  path: ({ places, perPlace }, unit) => [
    'Evite el borde: empiece a unos veinte pasos dentro de la parcela y no tome los surcos de afuera.',
    `Camine en zigzag amplio por toda la parcela, con ${places} puntos, también en partes bajas o con malezas.`,
    `En cada punto revise ${units(perPlace, unit)}, cada pocos pasos, como vengan, sin escoger.`,
    `Después del punto ${places} vuelva por otros surcos, a puntos nuevos entre los primeros.`,
  ],
  place: (place, lap, places) => (lap === 1 ? `Punto ${place} de ${places}` : `Punto ${place} de ${places}, vuelta ${lap}`),
  answer: {
    below: 'Pare: por debajo',
    above: 'Pare: por encima',
    'go-on': 'Siga',
    'undecided-at-limit': 'Pare: demasiado justo',
  },
  meaning: (judgement, plan) =>
    ({
      below: `La parcela está por debajo del umbral de ${level(plan.threshold, plan)}.`,
      above: `La parcela está por encima del umbral de ${level(plan.threshold, plan)}.`,
      'go-on': 'Todavía no se ha visto bastante.',
      'undecided-at-limit': `La parcela está cerca del umbral de ${level(plan.threshold, plan)}.`,
    })[judgement],
  toGo: (at, sampled) => {
    if (at.judgement !== 'go-on') return '';
    const most = `A lo sumo ${units(at.mostMore, sampled.unit)} más.`;
    const clean =
      at.cleanToBelow === null
        ? ''
        : ` Con ${at.cleanToBelow} ${masculine(sampled.unit) ? 'limpios seguidos' : 'limpias seguidas'} se termina.`;
    return `${most}${clean}`;
  },
  next: (judgement) =>
    ({
      below: 'Mire otra vez en una semana, o cuando las trampas lo digan.',
      above: 'Toca decidir, con el agricultor y un asesor autorizado.',
      'go-on': '',
      'undecided-at-limit': 'Háblelo con el agricultor o un asesor, o muestree otra vez en dos o tres días.',
    })[judgement],
  inFields,
  risks: (plan, atM0, atM1) => [
    `Con ${level(plan.test.m0, plan)} dice “por encima” ${inFields(atM0.above)}.`,
    `Con ${level(plan.test.m1, plan)} dice “por debajo” ${inFields(atM1.below)}.`,
  ],
  together: (insect, share, sampled) =>
    `Cuente ${insect} aparte en ${masculine(sampled.unit) ? 'los mismos' : 'las mismas'} ${UNITS[sampled.unit][1]}: juntos alcanzan su umbral con ${exactShare(share)}.`,
  noFigure: (insect) =>
    `El catálogo no tiene umbral para ${insect} en este cultivo. El conteo dice la proporción y qué tan segura es; no da respuesta.`,
  basis: (plan) =>
    `Entre ${between(plan.test.m0, plan.test.m1, plan)} puede salir cualquiera de las dos respuestas. Riesgos aceptados: ${spoken(percent(plan.test.alpha))} y ${spoken(percent(plan.test.beta))}; sin respuesta antes de ${units(plan.minSamples, plan.unit)}, a lo sumo ${plan.maxSamples}. Lo que la regla no da lo elige Duskwatch.`,
  clumping: ({ clumping, correlation, unit }) => {
    const alike = `Las vecinas de un mismo punto se toman por parecidas: correlación ${spoken(fine(correlation))}`;
    const infested = `${masculine(unit) ? 'los' : 'las'} ${UNITS[unit][1]} ${masculine(unit) ? 'infestados' : 'infestadas'}`;
    const more = `Donde ${infested} están aún más juntos, hay más respuestas equivocadas: siga el recorrido.`;
    if (clumping === null) return `${alike}, como se fijó a mano. ${more}`;
    if (clumping.samples === 0) return `${alike}, un supuesto mientras sus muestras no digan qué había en cada punto. ${more}`;
    const samples = clumping.samples === 1 ? '1 muestra suya' : `${clumping.samples} muestras suyas`;
    return `${alike}, según ${clumping.places} puntos de ${samples}, sopesado con el supuesto. ${more}`;
  },
  cautions: [
    ...practicesFor('walking-fields').map(({ text }) => text.es),
    'Calor: agua, sombrero, sombra al mediodía. Pare si se marea.',
  ],
  keepOut: (until, product, hours) =>
    `No entre hasta el final del ${until}: ${product}, ${hours} h de reingreso según la etiqueta, como se anotó. Deciden la etiqueta y la ley local.`,
  sheet: {
    title: 'Hoja de muestreo',
    date: 'Fecha',
    scout: 'Monitoreador',
    time: 'Inicio y fin',
    weather: 'Tiempo',
    stage: 'Etapa del cultivo vista',
    lookFor: 'Qué buscar',
    noLook: 'Huevos, larvas o daño fresco, como los conoce.',
    walk: 'Por dónde caminar',
    cautions: 'Antes de entrar',
    when: 'Cuándo parar',
    howTo: (sampled, { perPlace }) =>
      `${countsInsects(sampled) ? 'Una casilla por unidad: escriba el número de masas de huevos.' : `Una casilla por unidad: una cruz si está ${marked(sampled, false)}, una raya si está ${masculine(sampled.unit) ? 'limpio' : 'limpia'}.`} Después de ${perPlace} por punto sume todo lo visto, y pare cuando la suma esté en una de las dos columnas.`,
    countAll: ({ places, perPlace }, unit) =>
      `Una casilla por unidad: una cruz si está ${marked({ unit, sign: 'infested' }, false)}, una raya si no. Revise ${units(places * perPlace, unit)} en total: no hay umbral publicado para parar antes.`,
    place: 'Punto',
    tally: ({ unit }) => `${upper(UNITS[unit][1])} en este punto`,
    soFar: (sampled) => (countsInsects(sampled) ? 'Masas en total' : `${upper(marked(sampled))} en total`),
    below: 'Pare: por debajo',
    above: 'Pare: por encima',
    examined: (unit) => `${UNITS[unit][1]} en total`,
    lap: (lap) => `Vuelta ${lap}`,
    result: 'Resultado',
    results: ['por debajo', 'por encima', 'demasiado justo', 'detenido antes'],
    enter: 'Anótelo en Duskwatch como muestra de esta parcela: unidades revisadas, infestadas y total.',
    figure: 'Umbral',
    page: (n, of) => `${n} de ${of}`,
    invented: 'Datos de demostración inventados',
    none: 'Ese día ninguna parcela tiene algo que muestrear.',
  },
};
