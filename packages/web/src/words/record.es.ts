/** Every string of the forms that write records, in Spanish. */
import type { RecordKind } from '@duskwatch/core';
import type { Label, RecordWords } from './record.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

const fieldId = { label: 'Parcela' };
const insect = { label: 'Insecto' };
const latitude = { label: 'Latitud, °', hint: 'Grados al norte; al sur, con signo menos.' };
const longitude = { label: 'Longitud, °', hint: 'Grados al este; al oeste, con signo menos.' };

const labels: Readonly<Record<RecordKind, Readonly<Record<string, Label>>>> = {
  fields: {
    fieldId: { label: 'Nombre corto', hint: 'No cambia nunca: las tablas se refieren a él.' },
    farm: { label: 'Finca' },
    name: { label: 'Nombre de la parcela' },
    crop: { label: 'Cultivo' },
    growthHabit: { label: 'Porte', hint: 'bush (de mata) o vining (de guía), donde una regla los distingue.' },
    plantedOn: { label: 'Siembra' },
    harvestOn: { label: 'Cosecha', hint: 'Hecha o esperada.' },
    latitude,
    longitude,
    timeZone: { label: 'Zona horaria', hint: 'Por ejemplo America/Halifax.' },
    weatherSource: { label: 'Fuente del tiempo', hint: 'Solo hace falta si el programa tiene varias.' },
  },
  stages: { fieldId, observedOn: { label: 'Vista el' }, stage: { label: 'Etapa' } },
  traps: {
    trapId: { label: 'Nombre de la trampa', hint: 'No cambia nunca: las revisiones se refieren a él.' },
    station: { label: 'Estación', hint: 'El lugar; varias trampas pueden compartirlo.' },
    insect,
    design: { label: 'Diseño' },
    latitude,
    longitude,
    hungOn: { label: 'Colgada el' },
    takenDownOn: { label: 'Retirada el', hint: 'Vacío mientras cuelga.' },
    informs: { label: 'Parcelas a las que informa', hint: 'Sus consejos se apoyan en esta trampa.' },
  },
  lures: {
    trapId: { label: 'Trampa' },
    placedOn: { label: 'Puesto el' },
    lifeDays: { label: 'Dura, días', hint: 'Como dice su envase; vacío si no se sabe.' },
  },
  checks: {
    trapId: { label: 'Trampa' },
    checkedOn: { label: 'Revisada el' },
    visit: { label: 'Visita del día' },
    targetCount: { label: 'Polillas buscadas', hint: 'Vacío solo en una visita no apta: sin contar no es cero.' },
    otherCount: { label: 'Otras polillas', hint: 'Vacío si nadie las contó.' },
    condition: { label: 'Estado' },
    emptied: { label: 'Vaciada' },
    note: { label: 'Nota' },
    photo: { label: 'Foto' },
  },
  weather: {
    sourceId: { label: 'Fuente' },
    date: { label: 'Día' },
    tminC: { label: 'Mínima, °C' },
    tmaxC: { label: 'Máxima, °C' },
    precipitationMm: { label: 'Lluvia, mm' },
  },
  samples: {
    fieldId,
    insect,
    sampledOn: { label: 'Muestreado el' },
    kind: { label: 'Se miraron' },
    unitsExamined: { label: 'Examinadas', hint: 'Cuántas.' },
    unitsInfested: { label: 'Infestadas', hint: 'Vacío si no se anotó.' },
    totalCount: { label: 'Insectos en total', hint: 'Vacío si no se contaron.' },
  },
  treatments: {
    fieldId,
    insect,
    appliedOn: { label: 'Aplicado el' },
    product: { label: 'Producto', hint: 'Como usted lo llama.' },
    protectsDays: { label: 'Protege, días', hint: 'Vacío si no se sabe.' },
    reentryHours: { label: 'Reentrada, horas', hint: 'De la etiqueta que usted leyó.' },
    preharvestDays: { label: 'Antes de cosechar, días', hint: 'De la etiqueta que usted leyó.' },
  },
  rules: {
    ruleId: { label: 'Regla' },
    crop: { label: 'Cultivo' },
    insect,
    design: { label: 'Diseño' },
    stages: { label: 'Etapas' },
    threshold: { label: 'Umbral, polillas por trampa' },
    per: { label: 'Por' },
    intervalDays: { label: 'Intervalo, días' },
    validFrom: { label: 'Vale desde' },
    validTo: { label: 'Vale hasta' },
    source: { label: 'Fuente' },
  },
};

export const recordEs: RecordWords = {
  kinds: {
    fields: 'parcela',
    stages: 'etapa',
    traps: 'trampa',
    lures: 'atrayente',
    checks: 'revisión',
    weather: 'día de tiempo',
    samples: 'muestra',
    treatments: 'tratamiento',
    rules: 'regla',
    settings: 'ajustes del programa',
  },
  labels,

  yes: 'sí',
  no: 'no',
  nothing: 'nada',
  close: 'Cerrar',
  cancel: 'Cancelar',
  choose: 'Elegir …',
  required: 'hace falta',
  got: (got) => `recibido: ${got}`,
  expected: (expected) => `esperado: ${expected}`,
  emptyHere: 'nada escrito',
  fillIn: 'Rellénelo.',
  faults: (n) => `${plural(n, 'dato', 'datos')} por corregir antes de poder guardar`,

  record: {
    title: 'Anotar',
    stage: 'Etapa vista',
    sample: 'Muestra',
    treatment: 'Tratamiento',
    recorded: (n) => `${plural(n, 'registro', 'registros')} de esta temporada`,
    editField: 'La parcela misma',
    fieldHistory: 'Historia de la parcela',
  },
  titles: {
    add: {
      fields: 'Añadir una parcela',
      stages: 'Anotar una etapa',
      traps: 'Añadir una trampa',
      lures: 'Anotar un cambio de atrayente',
      checks: 'Anotar una revisión',
      samples: 'Anotar una muestra',
      treatments: 'Anotar un tratamiento',
    },
    edit: {
      fields: 'Editar la parcela',
      stages: 'Editar la etapa',
      traps: 'Editar la trampa',
      lures: 'Editar el atrayente',
      checks: 'Editar la revisión',
      samples: 'Editar la muestra',
      treatments: 'Editar el tratamiento',
    },
  },
  save: 'Guardar',
  replaces: 'Ya hay un registro así: al guardar se reemplaza, y el anterior queda en la historia.',
  placeHere: 'Tomar el lugar de este dispositivo',
  placing: 'Buscando este dispositivo …',
  noPlace: 'Este dispositivo no dice dónde está.',

  sampling: {
    title: 'Qué mirar',
    none: 'El catálogo no nombra ninguna muestra para este insecto en este cultivo. Cuente lo que pueda y escriba cuántas miró.',
    look: (units, unitsHigh, unit, places, perPlace) =>
      `Examine ${units}${unitsHigh ? `–${unitsHigh}` : ''} ${unit}${places && perPlace ? `: ${perPlace} en cada uno de ${places} sitios` : ''}.`,
    sign: {
      infested: 'Cuente como infestadas las que tengan larvas vivas.',
      eggs: 'Cuente como infestadas las que tengan huevos.',
      damaged: 'Cuente como infestadas las dañadas.',
      'egg-masses': 'Cuente las masas de huevos en total; las que tengan alguna están infestadas.',
    },
    reached: (share, unit) => `La regla se alcanza con ${share} de ${unit}.`,
    masses: (each, unit) => `La regla se alcanza con ${each} masas de huevos de promedio, sobre todas las ${unit}.`,
    units: { plants: 'plantas', ears: 'mazorcas', fruit: 'frutos' },
    region: (region) => `Hecho para ${region}.`,
    source: (source, standing) => `Fuente: ${source} (${standing}).`,
  },

  cautions: 'Antes de hacerlo',
  label: 'Estas cifras son las de la etiqueta del producto: léalas allí y escriba lo que dice.',

  toast: {
    label: 'Lo que se hizo',
    saved: (what) => `Guardado: ${what}.`,
    removed: (what) => `Quitado: ${what}.`,
    restored: (what) => `Recuperado: ${what}.`,
    undone: 'Deshecho.',
    undo: 'Deshacer',
    dismiss: 'Cerrar el aviso',
    offline: 'Queda en esta máquina hasta que se pueda enviar.',
    refused: (why) => `El servidor no lo aceptó: ${why}`,
    seeRefused: 'Ver qué dijo',
    notKept: 'El navegador no quiso guardarlo; no se guardó nada.',
  },
  unsent: (n) => `${n} sin enviar`,
  otherPerson: (n) => `${plural(n, 'registro', 'registros')} de otra persona ${n === 1 ? 'espera' : 'esperan'} en esta máquina`,
};
