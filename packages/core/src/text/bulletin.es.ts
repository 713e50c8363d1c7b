import type { BulletinWording } from './bulletin-types.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const GENERATION: Readonly<Record<number, string>> = { 1: ' de la primera generación', 2: ' de la segunda generación' };

export const bulletinSpanish: BulletinWording = {
  title: (program) => `${program}: polillas de la semana`,
  week: (from, on) => `Semana del ${from} al ${on}`,
  invented: 'Demostración inventada: esas fincas, parcelas y capturas no existen.',
  summary: 'En breve',
  quiet: 'No hay nada que decidir ni que ir a mirar según las reglas que se conocen.',
  first({ insect, crops, change }, w) {
    const decide = crops.reduce((sum, crop) => sum + crop.decide, 0);
    const scout = crops.reduce((sum, crop) => sum + crop.scout, 0);
    const name = capital(w.insect(insect.id).split(' / ')[0]!);
    const more = change === 'more' ? ', y se capturó más que la semana anterior' : '';
    if (decide > 0) return `${name}: hay una decisión pendiente en ${plural(decide, 'parcela', 'parcelas')}${more}.`;
    if (scout > 0) return `${name}: ${plural(scout, 'parcela', 'parcelas')} por muestrear${more}.`;
    return change === 'more' ? `${name}: se capturó más que la semana anterior.` : null;
  },
  caught({ week, before, change, design }, w) {
    if (week === null) return 'Esta semana no se dice ninguna captura: muy pocas fincas, o ninguna visita que diga algo.';
    const now = `${w.figure(week.perNight)} polillas por noche y trampa (${week.moths} en ${plural(week.nights, 'noche de trampa', 'noches de trampa')}; ${plural(week.traps, 'trampa', 'trampas')} en ${week.farms} fincas${design ? `, ${w.design[design]}` : ''})`;
    if (before === null || change === null) return `${now}. La semana anterior no se conoce.`;
    const then = w.figure(before.perNight);
    if (change === 'unclear') return `${now}; ${then} la semana anterior, sin un cambio claro.`;
    return `${now}, ${change === 'more' ? 'más' : 'menos'} que las ${then} de la semana anterior.`;
  },
  earlier({ earlier }, w) {
    if (earlier.length === 0) return null;
    return `En la misma semana: ${earlier.map(({ year, week }) => `${w.figure(week.perNight)} en ${year}`).join(', ')}.`;
  },
  crop({ crop, fields, decide, late, scout, covered, blind, by }, w) {
    const name = crop === null ? 'Otros cultivos' : capital(w.crop(crop));
    const said = [
      decide > 0 && `decisión pendiente en ${decide}${late > 0 ? `, ${late} con atraso` : ''}`,
      scout > 0 && `muestrear ${scout}`,
      covered > 0 && `${covered} ${covered === 1 ? 'cubierta' : 'cubiertas'} por un tratamiento`,
      blind > 0 && `${blind} donde no se puede saber`,
    ].filter((part) => part !== false);
    const first = by === null ? '' : ` Lo primero, a más tardar el ${w.day(by)}.`;
    return `${name} (${plural(fields, 'parcela', 'parcelas')}): ${said.length > 0 ? said.join('; ') : 'seguir observando'}.${first}`;
  },
  expected({ event, generation, early, middle, late, lateOpen, standing }, w) {
    const what = `${capital(w.event[event])}${(generation && GENERATION[generation]) ?? ''}`;
    const memory = standing === 'memory' ? ' (con una cifra de memoria)' : '';
    if (lateOpen)
      return `${what}: lo más probable, el ${w.day(middle)}, no antes del ${w.day(early)}; hasta cuándo no se sabe${memory}.`;
    if (early === late) return `${what}: el ${w.day(middle)}${memory}.`;
    return `${what}: lo más probable, el ${w.day(middle)}, entre el ${w.day(early)} y el ${w.day(late)}${memory}.`;
  },
  cautions: {
    title: 'Antes de hacer algo',
    lines: [
      'Que se alcance una regla quiere decir que hay una decisión pendiente. No es un tratamiento.',
      'Mire primero la parcela. La etiqueta, la ley local y un asesor con licencia van antes que este boletín: lea los intervalos de reingreso y de espera a cosecha, y cuide las abejas en vuelo y el agua.',
    ],
  },
  sure: {
    title: 'Qué tan seguro es',
    lines: ({ fewestFarms, withheld }) => [
      `Cada cifra se apoya en al menos ${fewestFarms} fincas juntas; lo que se apoya en menos no se dice${withheld > 0 ? ` (${withheld} esta semana)` : ''}. Sus parcelas pueden ser distintas: están en el programa.`,
      'Las fechas vienen del calor hasta hoy y del tiempo de años anteriores; cada extremo se rebasa en uno de diez años. Una trampa dice quién vuela, no qué hay en las plantas.',
    ],
  },
  sources: { title: 'Fuentes', none: 'Esta semana no habló ninguna regla ni modelo publicado.' },
  next: { title: 'Próximo boletín', line: (day) => `${capital(day)}.` },
};
