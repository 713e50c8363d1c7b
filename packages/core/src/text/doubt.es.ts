/** Lo que se dice de una trampa de la que los registros hacen dudar, en español. */
import type { Evidence } from '../advice/types.ts';
import type { IsoDay } from '../base/day.ts';

type TrapDoubt = Evidence & { kind: 'trap-doubt' };

export function doubtLine(item: TrapDoubt, date: (day: IsoDay) => string, number: (value: number) => string): string {
  return item.doubt === 'silent'
    ? `La trampa ${item.trapId} no ha capturado nada desde ${date(item.since)}, mientras otras de su clase capturaron unas ${number(item.expected)} cada una: mire su atrayente, su entrada y su lugar.`
    : `La trampa ${item.trapId} ha capturado ${item.count} desde ${date(item.since)}, mientras otras de su clase capturaron unas ${number(item.expected)} cada una: mire su atrayente, lo que se contó y su lugar.`;
}

export function doubtSentence(item: TrapDoubt, date: (day: IsoDay) => string, number: (value: number) => string): string {
  const chance =
    item.chance < 0.0005
      ? 'menos de una trampa sana de cada 2000'
      : `cerca de una trampa sana de cada ${number(Math.round(1 / item.chance))}`;
  const so =
    item.doubt === 'loud'
      ? 'Su captura se usa, con una duda.'
      : item.degree === 'strong'
        ? 'No se usa hasta que vuelva a capturar, se arregle o alguien responda en Preguntas que su lugar es así.'
        : 'Aún se usa, con una duda, hasta que vuelva a capturar, se arregle o alguien responda en Preguntas que su lugar es así.';
  const look = item.doubt === 'silent' ? 'calla tanto en un lugar pobre' : 'captura tanto en un lugar bueno';
  return `${doubtLine(item, date, number)} Según difieren los lugares, ${chance} ${look}. ${so}`;
}
