/** Every string of the map in Spanish. */
import type { MapWords } from './map.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const mapEs: MapWords = {
  title: 'Mapa',
  sub: (n, hidden) => `${plural(n, 'estación', 'estaciones')} con lugar${hidden ? `, ${hidden} sin él: vea la tabla` : ''}`,
  loading: 'Leyendo las estaciones …',
  insect: 'Insecto',
  all: 'Todos los insectos',
  label: (insect) => `Estaciones para ${insect}: el tamaño es la tasa, hueca es no apta, un anillo es que toca revisarla`,
  noWebgl: 'Este navegador no dibuja mapas aquí (sin WebGL), así que las estaciones están sobre un plano liso.',
  local: 'La captura es local: entre las trampas no se dibuja nada.',
  zoomIn: 'Más cerca',
  zoomOut: 'Más lejos',
  fit: 'Mostrar todo',
  north: 'N',
  noRateShort: 'sin tasa',
  key: {
    title: 'Marcas',
    rate: 'tasa: el área crece con las polillas por trampa y noche',
    unfit: 'ahora sin información: no apta, atrasada o nunca contada',
    due: 'toca revisar o cambiar el atrayente',
    field: 'parcela',
  },
  table: 'Tabla detrás del mapa',
  columns: {
    station: 'Estación',
    insect: 'Insecto',
    trap: 'Trampa',
    rate: 'Polillas por noche',
    state: 'Estado',
    place: 'Lugar',
  },
  empty: 'Ninguna estación tiene todavía coordenadas. Dé latitud y longitud a las trampas, y estarán aquí.',

  base: {
    title: 'Mapa de fondo',
    lead: 'Opcional. Sin él no se pregunta nada a ningún otro servidor. Lo que indique aquí queda en este navegador.',
    none: 'Ninguno: papel liso',
    file: 'Un archivo PMTiles de este dispositivo',
    fileHint: 'Se lee donde está y nunca se envía. Se elige de nuevo en cada visita.',
    address: 'Una dirección',
    addressHint: 'Un estilo (…/style.json), teselas (…/{z}/{x}/{y}.png) o un archivo PMTiles (….pmtiles).',
    attribution: 'Crédito que se muestra',
    attributionHint: 'Como lo pida quien lo ofrece.',
    use: 'Usarlo',
    faulty: 'Eso no es una dirección que empiece por https:// o por /. Con http:// solo se llega a este equipo.',
    refused: (origin) =>
      `Este servidor no deja que sus páginas pregunten a ${origin}. Quien lo lleva lo permite arrancándolo con --map-origin ${origin}.`,
    failed: (why) => `El mapa de fondo no se pudo leer: ${why}`,
  },
};
