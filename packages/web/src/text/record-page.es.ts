/** Every string of what a grower writes down on a phone in Spanish. */
import type { RecordPageWords } from './record-page.en.ts';

export const recordPageEs: RecordPageWords = {
  title: 'Anotar',
  field: '¿En qué parcela?',
  reading: 'Leyendo sus parcelas …',
  kinds: {
    stages: { name: 'Una etapa del cultivo', means: 'Jilote, fruto, cosecha: el consejo la sigue.' },
    samples: { name: 'Lo que revisó', means: 'Tantas plantas, tantas con el insecto.' },
    treatments: { name: 'Un tratamiento', means: 'Con los días y las horas de su etiqueta.' },
    decisions: { name: 'Se decidió no actuar, porque …', means: 'Para que nadie vuelva a preguntar mañana.' },
  },
  kept: 'Sin señal se guarda en este teléfono y se envía solo.',
  none: 'Todavía no hay ninguna parcela suya. La coordinación anota ranchos y parcelas.',
};
