import type { WalkWords } from './walk.en.ts';

export const walkEs: WalkWords = {
  title: 'Muestreo',
  opening: 'Abriendo …',
  skip: 'Ir al muestreo',
  round: 'Ronda',
  fields: 'Parcelas',

  nothing: {
    title: 'Todavía no hay nada que muestrear guardado en este teléfono',
    text: 'Abra esta página una vez con señal. Después funciona sin ella.',
    none: 'Hoy ninguna parcela tiene algo que muestrear.',
    noneHow:
      'Las parcelas aparecen aquí cuando una trampa, una muestra o una regla las une a un insecto y hay un cultivo en la parcela.',
  },

  choose: {
    lead: '¿Qué parcela y qué insecto?',
    find: 'Buscar una parcela',
    noMatch: 'Ninguna parcela con ese nombre.',
    open: (n) => `en curso: ${n} vistas`,
    last: (date, found) => `última muestra ${date}: ${found}`,
    of: (infested, examined) => `${infested} de ${examined}`,
    read: (date) => `Según el servidor el ${date}.`,
  },

  before: {
    plan: 'Qué revisar',
    rule: '¿Qué umbral?',
    stage: 'Etapa del cultivo que ve',
    stageWhy: (needed) => `El umbral vale en: ${needed}. Sin una etapa vista hace poco, el consejo no puede usar la muestra.`,
    look: 'Qué buscar',
    walk: 'Por dónde caminar',
    howMany: (least, most) => `Al menos ${least}, a lo sumo ${most}. Termina en cuanto la parcela está clara.`,
    countAll: (units) => `En total ${units}: nada lo termina antes.`,
    cautions: 'Antes de entrar',
    start: 'Empezar',
    source: (source) => `Fuente: ${source}`,
    goOn: 'El tiempo de la etiqueta ya pasó: seguir',
    other: 'Elegir otra parcela',
  },

  walk: {
    clean: 'Sin nada',
    left: (n) => `${n} más aquí`,
    pad: '¿Cuántas en esta?',
    tally: (units, found) => `${units}; ${found}`,
    share: (share, low, high) => `${share}, entre ${low} y ${high} (intervalo del 80 %)`,
    walkTo: (place) => `Camine al punto ${place}`,
    walkHow: (units) => `Unos 40 pasos más, en zigzag, lejos del borde. Allí, ${units} seguidas, como vengan.`,
    lap: 'Esta vez por otros surcos, entre los primeros puntos.',
    arrived: (place) => `Estoy en el punto ${place}`,
    goOn: 'Siga: aún sin respuesta',
    undo: 'Quitar la última',
    save: 'Guardar la muestra',
    stop: 'Parar aquí',
    stopText: 'Se guarda como está, sin respuesta del plan. El consejo lee la proporción hallada.',
    discard: 'Desechar',
    back: 'Seguir caminando',
    failed: 'Este teléfono no pudo guardarlo. Libere espacio y toque otra vez.',
  },

  after: {
    record: 'Qué anotar',
    recordSample: 'La muestra, con el botón al pie.',
    recordStage: 'No se anotó la etapa del cultivo: mírela ahora, el umbral depende de ella.',
    recordDecision: 'Si se decide no tratar, anote por qué; un tratamiento, cuando se haga.',
    tell: 'A quién avisar',
    tellAbove: (farm) => `A quien cultiva ${farm}, hoy, y a quien coordina: la decisión es de ellos, con un asesor autorizado.`,
    tellClose: (farm) => `A quien cultiva ${farm} y a quien coordina: está demasiado cerca para decidir solo con un umbral.`,
    tellBelow: 'No hace falta avisar a nadie: el consejo la cuenta en cuanto se envíe.',
    tellCount: (farm) => `A quien cultiva ${farm} y a quien coordina, si es más de lo usual: ningún umbral lo dice.`,
  },

  decision: {
    button: { 'not-treated': 'Se decidió no tratar, porque …', 'not-scouted': 'Se decidió no ir a mirar, porque …' },
    because: 'Porque',
    note: 'Nota (hace falta si el motivo es otro)',
    adviser: 'Solo lo que ya decidió quien cultiva, con un asesor autorizado. La pregunta vuelve cuando pase su plazo.',
    save: 'Guardar la decisión',
    cancel: 'Ahora no',
    kept: 'Decisión guardada.',
    lacks: {
      reason: 'Elija un motivo.',
      note: 'Diga cuál fue el otro motivo.',
      failed: 'Este teléfono no pudo guardarlo. Libere espacio y toque otra vez.',
    },
  },

  saved: {
    text: (field, found) => `${field}: guardado, ${found}.`,
    undo: 'Deshacer',
    undone: 'Retirada: el recorrido sigue abierto.',
    discarded: 'Desechado.',
    result: 'Último resultado',
    advice: 'El consejo para esta parcela la cuenta en cuanto se haya enviado.',
  },
};
