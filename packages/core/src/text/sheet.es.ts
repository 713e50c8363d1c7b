import type { SheetWording } from './sheet-types.ts';

const many = (count: number, one: string, more = `${one}s`): string =>
  `${count.toLocaleString('es-MX')} ${count === 1 ? one : more}`;

export const sheetSpanish: SheetWording = {
  reading: ({ kind, traps, checks, insects, from, to, words, days }) => {
    const when = from === null || to === null ? 'sin día seguro todavía' : from === to ? from : `del ${from} al ${to}`;
    if (kind === 'weather') return `Clima de ${many(days, 'día')}, ${when}`;
    const told = words.length === 0 ? '' : `, ${many(words.length, 'palabra')} en lugar de conteos o junto a ellos`;
    const of = insects.length === 0 ? '' : ` de ${insects.join(', ')}`;
    return `${many(traps, 'trampa')}${of}, ${many(checks, 'revisión', 'revisiones')} en ${many(days, 'día')}, ${when}${told}`;
  },
  aside: ({ sheet, why }) =>
    `No se lee: ${sheet}, ${why === 'hidden' ? 'una hoja oculta' : why === 'summary' ? 'que resume las otras' : 'que no tiene conteos ni clima'}`,
  question: ({ ask, about }) => {
    switch (ask) {
      case 'dateOrder':
        return `${about}: ¿va primero el día (dmy) o el mes (mdy)?`;
      case 'year':
        return `Los días no tienen año, como ${about}. ¿De qué año son?`;
      case 'figures':
        return '¿Son las cifras todas las polillas desde que se vació la trampa (total), o ya divididas: por noche (per-night), por semana (per-week)?';
      case 'dayMeans':
        return 'Los días son los del comienzo de cada semana. ¿Cuántos días después se revisó la trampa?';
      case 'word':
        return about?.includes('#')
          ? `¿Qué significa «${about}», donde # es la cifra de la celda?`
          : `¿Qué significa «${about}» en lugar de un conteo?`;
      case 'insectName':
        return `¿Qué insecto es «${about}»?`;
      case 'insect':
        return '¿Para qué insecto son las trampas?';
      case 'design':
        return '¿De qué diseño son las trampas?';
      case 'designName':
        return `¿Qué diseño de trampa es «${about}»?`;
      case 'crop':
        return '¿Qué cultivo hay en las parcelas?';
      case 'farm':
        return '¿De qué rancho son las parcelas?';
      case 'field':
        return '¿A qué parcela informan las trampas? each-trap: una parcela propia para cada una.';
      case 'condition':
        return '¿Servían las trampas en estas visitas, donde la hoja no dice otra cosa?';
      case 'hungOn':
        return '¿Qué día se colgaron las trampas? first-date: el día del primer conteo, que entonces no tiene noches antes.';
      case 'temperatureUnit':
        return '¿En qué unidad están las temperaturas: °C, °F o décimas de °C (tenths-C)?';
      case 'precipitationUnit':
        return '¿En qué unidad está la lluvia: mm, pulgadas (in) o décimas de mm (tenths-mm)?';
      case 'source':
        return '¿Cómo se llama la fuente de clima, tal como la nombran las parcelas?';
      case 'clock':
        return 'Las horas están en tiempo universal. ¿Cuántas horas hay que sumar para el sitio (-6 si va seis horas atrás)?';
    }
  },
  evidence: ({ evidence, cells }) => {
    const shown = evidence.map(
      ({ sheet, row, column, text }) => `${text || 'una celda vacía'} en ${sheet === null ? '' : `${sheet} `}${column}${row}`,
    );
    const more = cells - evidence.length;
    return `${shown.join('; ')}${more > 0 ? `; y ${more.toLocaleString('es-MX')} más` : ''}`;
  },
};
