/** Spanish for every fault; one without words does not compile. */

import type { Fault, Hint, StorageTrouble, Wanted } from '../base/fault.ts';
import { spanishDay } from './days.ts';
import type { TradeNames } from './trade-names.ts';

interface Said {
  readonly expected: string;
  readonly fix: string;
}

const list = (texts: readonly string[]) => texts.join(' o ');
const meant = (close: readonly string[], otherwise: string) => (close.length > 0 ? `¿Quiso decir ${list(close)}?` : otherwise);

/** Days that can stand in the wrong order, as a form calls them. */
const DAYS: Readonly<Record<string, string>> = {
  planted_on: 'la siembra',
  harvest_on: 'la cosecha',
  hung_on: 'el día en que se colgó',
  taken_down_on: 'el día en que se retiró',
  valid_from: 'el inicio de vigencia',
  valid_to: 'el fin de vigencia',
  hang_on: 'el día de colgar',
  take_down_on: 'el día de retirar',
  opened_on: 'el día en que se abrió',
  expires_on: 'el día de caducidad',
};
const dayName = (column: string) => DAYS[column] ?? column;

const ROLES: Readonly<Record<string, string>> = {
  coordinator: 'quien coordina',
  scout: 'quien revisa trampas',
  grower: 'quien cultiva',
  reader: 'quien solo lee',
};

const STORAGE: Readonly<Record<StorageTrouble, string>> = {
  busy: 'Otro proceso está escribiendo. Vuelva a intentarlo en un momento; lo no enviado espera en el teléfono.',
  away: 'La base de datos no responde ahora. Vuelva a intentarlo en un momento; lo no enviado espera en el teléfono.',
  'disk-full':
    'El disco del servidor está lleno: no se guardó nada de esto, y lo guardado antes sigue ahí. Pida a quien administra el servidor que libere espacio.',
  'disk-fault':
    'El disco del servidor no responde bien: no se guardó nada de esto. Pida a quien administra el servidor que lo revise.',
  'read-only':
    'El servidor no puede escribir en su carpeta: no se guardó nada de esto. Pida a quien lo administra que corrija los permisos.',
  damaged:
    'La base de datos está dañada, y lo que no es seguro no se muestra. Pida a quien administra el servidor que restaure la última copia buena; no escriba más hasta entonces.',
};

function wanted({ type, minimum, maximum }: Wanted): string {
  const range =
    minimum === null
      ? maximum === null
        ? ''
        : ` hasta ${maximum}`
      : maximum === null
        ? ` de ${minimum} o más`
        : ` de ${minimum} a ${maximum}`;
  switch (type) {
    case 'day':
      return 'un día del calendario';
    case 'whole':
      return `un número entero${range}`;
    case 'number':
      return `un número${range}`;
    case 'word':
      return 'una de las opciones';
    case 'yes-no':
      return 'sí o no';
    case 'list':
      return 'nombres separados por ;';
    case 'text':
      return 'un texto';
  }
}

function mend(hint: Hint): string {
  switch (hint.kind) {
    case 'fill-in':
      return 'Rellénelo.';
    case 'figures-only':
      return 'Escriba solo cifras.';
    case 'whole':
      return 'Escriba un número entero.';
    case 'correct':
      return 'Corríjalo.';
    case 'fahrenheit':
      return 'Parece estar en °F: escríbalo en °C.';
    case 'one-of':
      return 'Elija una de la lista.';
    case 'write':
      return `Escriba ${list(hint.texts)}.`;
  }
}

export const faultSpanish: {
  readonly [K in Fault['kind']]: (fault: Fault & { readonly kind: K }, names: TradeNames) => Said;
} = {
  unreadable: (fault) => ({ expected: wanted(fault.wanted), fix: mend(fault.hint) }),
  'too-long': ({ longest, length }) => ({ expected: `${longest} caracteres como máximo`, fix: `Acórtelo: tiene ${length}.` }),
  'sign-in-id': () => ({ expected: 'un nombre sin ; ni |', fix: 'Use otro signo, como un guion.' }),
  'no-such-day': () => ({ expected: 'un día que exista', fix: 'Corrija el día.' }),
  'future-day': ({ last }) => ({
    expected: `un día hasta el ${spanishDay(last)}`,
    fix: 'Corrija el día; quizá esté adelantado el reloj del teléfono o de la computadora que lo anotó.',
  }),
  'wrong-order': ({ first, from, second }) => ({
    expected: `un día que no sea anterior a ${dayName(first)} (${spanishDay(from)})`,
    fix: `Corrija ${dayName(first)} o ${dayName(second)}: están en orden inverso.`,
  }),
  'time-zone': () => ({ expected: 'una zona horaria IANA', fix: 'Escríbala como America/Halifax, o déjela vacía.' }),
  'too-many-visits': ({ most }) => ({ expected: `${most} visitas a una trampa por día como máximo`, fix: 'Revise las fechas.' }),
  uncounted: () => ({
    expected: 'un conteo: no contado no es cero',
    fix: 'Escriba el conteo (0 si la trampa no tenía ninguna), o marque la trampa como no apta si no se pudo contar.',
  }),
  'reason-of-fit': () => ({
    expected: 'una razón solo en una visita en que la trampa no estaba apta',
    fix: 'Marque la trampa como no apta, o quite la razón.',
  }),
  'reason-unsaid': () => ({
    expected: 'cuál fue el otro motivo',
    fix: 'Escríbalo en la nota, o elija otro de los motivos.',
  }),
  'product-said': () => ({
    expected: 'ningún producto donde no se sabe cuál fue',
    fix: 'Corrija uno de los dos.',
  }),
  'rate-without-unit': () => ({
    expected: 'una dosis con su unidad, o ninguna de las dos',
    fix: 'Escriba las dos, o deje vacías las dos.',
  }),
  'low-above-high': () => ({
    expected: 'una mínima que no supere la máxima del día',
    fix: 'Vea si se cambiaron una por otra; deje vacía la equivocada.',
  }),
  'forecast-after': () => ({
    expected: 'un pronóstico hecho a más tardar el día que pronostica',
    fix: 'Corrija uno de los dos días; déjelo vacío para un día medido.',
  }),
  'fills-itself': () => ({ expected: 'otra fuente', fix: 'Nombre otra fuente, o déjelo vacío.' }),
  'source-lacks': ({ column }) => ({
    expected: `lo que hace falta para pedir al servicio (${column})`,
    fix: 'Complételo, o apague la búsqueda automática.',
  }),
  'infested-above-examined': ({ infested, examined }) => ({
    expected: `no más unidades infestadas que revisadas (${infested} de ${examined})`,
    fix: 'Corrija una de las dos; los insectos contados van en el total.',
  }),
  'places-do-not-add-up': ({ infested, examined }) => ({
    expected: `infestadas/revisadas de cada punto, en suma ${infested}/${examined}`,
    fix: 'Corríjalo, o déjelo vacío si no se anotó punto por punto.',
  }),
  'worn-above-stock': ({ wornOut, onHand }) => ({
    expected: `no más piezas gastadas que existentes (${wornOut} de ${onHand})`,
    fix: 'Corrija una de las dos.',
  }),
  'unknown-insect': ({ close }, names) => ({
    expected: 'un insecto del catálogo, u otro por su nombre científico, como acleris-minuta',
    fix: meant(
      close.map((id) => names.insect(id)),
      'Elija uno de la lista.',
    ),
  }),
  'unknown-stage': ({ crop, close }, names) => ({
    expected: `una etapa de ${names.crop(crop)}, en palabras o como código BBCH`,
    fix: `Por ejemplo: ${close.map((id) => names.stage(crop, id)).join(', ')}.`,
  }),
  'key-twice': () => ({
    expected: 'un registro que no exista ya',
    fix: 'Ya hay uno así: cambie el nombre o el día, o edite aquel.',
  }),
  'repeated-check': () => ({
    expected: 'una segunda visita del día que difiera en algo de la primera',
    fix: 'Quite la repetida; si hubo dos visitas iguales, dígalo en la nota de la segunda.',
  }),
  'unknown-reference': ({ to, close }) => ({
    expected: to === 'fields' ? 'una parcela de este programa' : 'una trampa de este programa',
    fix: meant(close, 'Añádala, o corrija el nombre.'),
  }),
  'before-hung': ({ trapId, hungOn }) => ({
    expected: `un día desde que se colgó la trampa ${trapId} (${spanishDay(hungOn)})`,
    fix: 'Corrija este día, o el día en que se colgó la trampa.',
  }),
  'after-taken-down': ({ trapId, takenDownOn }) => ({
    expected: `un día hasta que se retiró la trampa ${trapId} (${spanishDay(takenDownOn)})`,
    fix: 'Corrija este día, o el día en que se retiró la trampa.',
  }),
  'unknown-weather-source': ({ known }) => ({
    expected: 'una fuente del tiempo que tenga datos',
    fix: `Use ${list(known)}, o añada sus días.`,
  }),
  'may-not-write': ({ role }) => ({
    expected: `algo que pueda escribir ${ROLES[role] ?? role}`,
    fix: 'Pida a quien coordina que lo escriba.',
  }),
  'other-farm': () => ({ expected: 'una parcela de su propia finca', fix: 'Pida a quien coordina que lo escriba.' }),
  'too-large': () => ({
    expected: 'menos de lo enviado',
    fix: 'Acorte la nota, o pida a quien administra el servidor que suba su límite.',
  }),
  storage: ({ trouble }) => ({ expected: 'datos que se puedan leer y guardar', fix: STORAGE[trouble] }),
  'photo-type': ({ types }) => ({ expected: types.join(', '), fix: 'Envíe la foto como la hizo la cámara, o como JPEG.' }),
};
