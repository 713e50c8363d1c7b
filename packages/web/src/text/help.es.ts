import type { HelpWords } from './help.en.ts';

export const helpEs: HelpWords = {
  title: 'Ayuda',
  sub: 'Cómo leer cada página, qué quieren decir las palabras, las teclas y de qué cuidarse. Abre también sin conexión.',
  contents: 'En esta página',
  reading: 'Cómo leer cada página',
  pages: {
    week: {
      title: 'Esta semana',
      text: 'Primero las decisiones pendientes, y de ellas las atrasadas, cada una con el día desde el que nadie ha respondido. Al lado, las parcelas por muestrear, las trampas por revisar y los atrayentes por cambiar. En la tabla las parcelas van hacia abajo y los insectos a lo ancho: cada celda dice un verbo, su fecha y la captura por noche con su intervalo. Toque una celda para ver los registros y la regla. Lo que no necesita nada está plegado; un punto quiere decir que el insecto no come de ese cultivo.',
    },
    list: {
      title: 'Lista de parcelas y trampas',
      text: 'Cada estación con sus trampas: qué cuelga ahí, qué dijo la última revisión, la captura por noche y en cuántas noches, qué está pendiente y qué edad tiene el atrayente frente a su vida declarada. «Mostrar» trae de vuelta las trampas retiradas.',
    },
    map: {
      title: 'Mapa',
      text: 'Cada parcela lleva la marca de su verbo más urgente. El tamaño según la captura aparece solo después de elegir un insecto y un diseño de trampa, porque las capturas de dos diseños nunca van en una misma escala. Entre las trampas no se dibuja nada: la captura es local.',
    },
    field: {
      title: 'Una parcela',
      text: 'Primero el veredicto y su razón, luego la temporada de cada insecto. Los puntos y las bandas son la captura por noche con su intervalo; un hueco quiere decir que ahí no hubo trampa en buen estado, nunca cero. La línea de rayas es el umbral de la regla. Abajo están las revisiones, los atrayentes, el calor acumulado con los eventos que fecha, la etapa del cultivo, los muestreos y los tratamientos.',
    },
    trap: {
      title: 'Una trampa',
      text: 'Qué es la trampa y dónde está, sus capturas de esta temporada y de las anteriores, y cada revisión y atrayente. Una trampa movida es otra trampa: sus capturas no se unen a las del lugar de antes.',
    },
    questions: {
      title: 'Preguntas',
      text: 'Registros que parecen raros: un conteo que casi no cuadra con los demás, dos trampas que quizá se cambiaron, una trampa callada entre vecinas que capturan mucho. Es una pregunta, no una falla. «Está bien» la cierra; el registro queda como se escribió.',
    },
    conflicts: {
      title: 'Conflictos',
      text: 'Dos personas escribieron cosas distintas del mismo registro. El más reciente está en uso y el otro se guarda; elija cuál vale. Nada se perdió, y los dos quedan en la historia.',
    },
    rounds: {
      title: 'Rondas',
      text: 'Quién pasa por cuáles estaciones en qué día. Diga cuántas personas, desde dónde y qué días; el orden es el más corto que se encontró. Las distancias en línea recta se alargan con un factor declarado, a menos que haya tiempos de manejo.',
    },
    bulletin: {
      title: 'Boletín',
      text: 'La semana para los productores, redactada con los conteos: qué vuela, hacia dónde va, qué decidir o ir a mirar por cultivo, y qué se espera. No se da ninguna cifra de menos de tres fincas, ni lugares. Las palabras se pueden cambiar; si el borrador llega a decir otra cosa, lo dice. Desde aquí no se envía nada.',
    },
    sheet: {
      title: 'La semana en papel',
      text: 'Para la pared y la camioneta. La primera hoja trae lo que hay que decidir y revisar, con lugar para escribir quién decidió y qué se halló. La segunda es para las salidas: una casilla por visita en siete días y los atrayentes de cada día. La tercera trae todas las parcelas con sus verbos. El atraso va en palabras, para impresoras grises.',
    },
    counts: {
      title: 'Anotar conteos',
      text: 'Conteos escritos en papel, anotados para un día: cifras y Tab, o una columna pegada de una hoja de cálculo. No queda nada hasta que usted guarda, y entonces todo junto; Deshacer lo quita junto. Una trampa cuya visita de ese día ya está en los registros se corrige en su propia página.',
    },
    scouting: {
      title: 'Muestreo',
      text: 'Por parcela e insecto, qué mirar, en cuántas plantas y para cuándo. De lo que se marque se puede imprimir una hoja.',
    },
    sampling: {
      title: 'Un plan de muestreo',
      text: 'Siga hasta que el número de plantas infestadas cruce una de las dos líneas. Debajo de la línea baja puede parar: está por debajo de la regla. Encima de la línea alta puede parar: está por encima. Entre las dos siga, hasta el último renglón. Las curvas dicen qué tan a menudo acierta cada respuesta.',
    },
    flights: {
      title: 'Vuelos',
      text: 'Un renglón por insecto y finca, en el orden de lo que viene. La loma llena es lo capturado, la de rayas lo esperado. La parte que ya voló lleva su intervalo al lado; si es ancho, todavía falta mucho por saber.',
    },
    season: {
      title: 'Plan de temporada',
      text: 'Cuándo colgar cada trampa, cuántas, qué atrayentes y cuánto cuestan, y al lado qué pasó con el plan. «Cuántas trampas» dice qué se escaparía y qué se avisaría en vano con una, dos o más.',
    },
    review: {
      title: 'Balance',
      text: 'Una temporada ya pasada: qué se decidió y qué siguió, diseños de trampa lado a lado en los mismos lugares, captura con atrayentes de distinta edad, y captura frente a infestación. Cada comparación dice en cuántos pares se apoya.',
    },
    people: {
      title: 'Personas',
      text: 'Quién se unió y qué puede ver. El coordinador lleva el programa, el monitoreador revisa trampas, el productor ve su finca, el lector ningún lugar exacto. Se entra con un enlace que sirve una vez.',
    },
    rules: {
      title: 'Reglas e insectos',
      text: 'Las reglas publicadas valen para una región; elija la del programa con su asesor. Abajo está la fuente de cada dato en que se apoyan los avisos. «De memoria» y «práctica común» merecen menos confianza que «publicado». Abajo está cada regla publicada con las parcelas que hoy se apoyan en ella; la coordinación puede apagar una, con un motivo que la evidencia repite.',
    },
    weather: {
      title: 'Datos del tiempo',
      text: 'Cada fuente con su primer y su último día, los días a los que les falta un extremo, y las parcelas de las que habla. El calor se suma sobre días medidos; un pronóstico nunca cuenta como medido. Una fuente puede traer sus días por sí misma, cuando un coordinador ha visto las condiciones de su servicio; lo que trajo, lo que falló y cuándo vuelve a preguntar está a su lado. Donde se nombra una fuente para los huecos, sus días se cuentan en todo calor que se apoya en ellos.',
    },
    data: {
      title: 'Importar y exportar',
      text: 'Los registros entran y salen como tablas. Un archivo con una falla se rechaza con cada falla nombrada; nada se guarda a medias. Donde una hoja se entendió de otro modo, señale sus filas. Una copia se mira antes de tomar el lugar del programa, que queda a un lado.',
    },
    settings: {
      title: 'Ajustes',
      text: 'El nombre del programa y cómo se llega a usted valen para todos. El idioma, las unidades, las fechas y el tema son de este navegador. Los registros guardan °C y metros, se muestre lo que se muestre.',
    },
    day: {
      title: 'Otro día',
      text: 'La línea del día, bajo el encabezado de cada página, elige el día en que se leen las páginas. En un día que no es hoy cuenta solo lo que entonces se sabía: avisos, capturas y pronósticos están como estaban. Un letrero lo dice hasta que vuelva a hoy.',
    },
  },
  glossary: 'Qué quieren decir las palabras',
  verbs: {
    watch: 'Por debajo de la regla, nada pendiente. La fecha es la de la próxima revisión.',
    scout: 'Vaya a ver las plantas: se esperan huevos o larvas, la captura manda a mirar, o no se conoce bien la etapa.',
    decide: 'Se alcanzó una regla. Decida para la fecha, con un asesor autorizado, si se hace algo. Duskwatch no decide.',
    covered: 'Un tratamiento todavía protege, por su etiqueta o por el intervalo de la regla, lo que termine primero.',
    blind:
      'No se puede decir nada: una trampa sin revisar o en mal estado, un atrayente agotado, o falta el tiempo o una regla. Dice qué devolvería la vista.',
  },
  terms: {
    late: { word: 'Atrasado', text: 'Pendiente desde un día pasado, y nadie ha escrito una respuesta.' },
    rate: {
      word: 'Captura por noche',
      text: 'Palomillas por trampa y noche, en las noches en que la trampa estaba en buen estado.',
    },
    interval: {
      word: 'Intervalo',
      text: 'El tramo en que está la tasa verdadera con la probabilidad que se dice; casi siempre 80 de 100.',
    },
    fit: {
      word: 'En buen o mal estado',
      text: 'Una trampa en mal estado (caída, llena, inundada, sin atrayente) no dice nada de sus noches. No son ceros.',
    },
    threshold: {
      word: 'Umbral',
      text: 'La captura o infestación a la que habla una regla. Se hizo para una región, un diseño de trampa y una etapa del cultivo.',
    },
    station: { word: 'Estación', text: 'Un lugar donde hay una o más trampas.' },
    design: {
      word: 'Diseño de trampa',
      text: 'Cómo está hecha la trampa: cono de malla, cubeta, pegajosa. Cada diseño captura distinto y nunca se juntan sin ajuste.',
    },
    lure: { word: 'Vida del atrayente', text: 'Cuánto atrae según su fabricante. Pasada, las capturas quedan cortas.' },
    biofix: {
      word: 'Biofix',
      text: 'El día desde el que se cuenta el calor: las primeras palomillas de un vuelo que dura, o una fecha del calendario.',
    },
    degreeDay: {
      word: 'Grado-día',
      text: 'Un grado sobre el umbral de desarrollo durante un día. Los insectos crecen por su suma, no por el calendario.',
    },
    event: {
      word: 'Temprano, medio, tarde',
      text: 'Una fecha esperada como tramo: uno de cada diez años llega antes de la temprana y uno de cada diez después de la tardía.',
    },
    flight: { word: 'Vuelo', text: 'Las palomillas de una generación en el aire, de la primera a la última.' },
    sample: { word: 'Muestreo', text: 'Plantas examinadas y cuántas estaban infestadas, en varios lugares de una parcela.' },
    stage: {
      word: 'Etapa del cultivo',
      text: 'Qué tan adelante va el cultivo: cogollo, espiga, jilote. Las reglas valen solo en algunas.',
    },
    reentry: { word: 'Reingreso', text: 'Horas después de un tratamiento en que nadie entra a la parcela; de la etiqueta.' },
    preharvest: {
      word: 'Días antes de la cosecha',
      text: 'Días que deben pasar entre un tratamiento y la cosecha; de la etiqueta.',
    },
    confidence: { word: 'Confianza', text: 'Cuánto sostienen los registros el verbo: alta, media o baja, con lo que la baja.' },
    standing: { word: 'Solidez de una fuente', text: 'Publicado, práctica común o de memoria: cuánto confiar en un dato.' },
  },
  keys: 'Teclas',
  keyboard: {
    find: { keys: '/', text: 'buscar una parcela, trampa, finca, insecto o página' },
    tab: { keys: 'Tab', text: 'a lo siguiente que se puede activar' },
    enter: { keys: 'Intro', text: 'lo abre' },
    escape: { keys: 'Esc', text: 'cierra una hoja, un menú o la búsqueda' },
    arrows: { keys: '↑ ↓', text: 'recorren una lista o un menú' },
    sideways: { keys: '← →', text: 'recorren pestañas, y los días de la gráfica de una temporada' },
    pages: { keys: 'RePág AvPág', text: 'una semana cada vez en la gráfica de una temporada' },
  },
  cautions: 'Los cuidados en un solo lugar',
  cautionsText:
    'Están también junto a cada acto. La etiqueta del producto, la ley local y un asesor autorizado deciden lo que se hace; Duskwatch dice cuándo toca decidir, y por qué.',
  acts: {
    planning: 'Planear',
    siting: 'Elegir el lugar',
    'setting-posts': 'Poner postes',
    'handling-lures': 'Manejar atrayentes',
    checking: 'Revisar trampas',
    'handling-moths': 'Manejar palomillas',
    'reading-catch': 'Leer una captura',
    'walking-fields': 'Caminar parcelas',
    deciding: 'Decidir',
    treating: 'Aplicar',
  },
  source: 'Fuente',
};
