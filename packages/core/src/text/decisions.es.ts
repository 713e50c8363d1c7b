/** Spanish of decisions not to act, and of why. */
import type { Wording } from './types.ts';

export const decision: Wording['decision'] = {
  'not-treated': 'no tratar',
  'not-scouted': 'no ir a mirar',
};

export const decisionReason: Wording['decisionReason'] = {
  'low-for-this-farm': 'la captura es baja para esta finca',
  'sample-below': 'una muestra halló menos que su cifra',
  'other-species': 'las polillas son de otra especie',
  'stage-not-at-risk': 'el cultivo no está en una etapa de riesgo',
  'harvest-near': 'la cosecha está cerca',
  'label-limit': 'la etiqueta no permite más',
  weather: 'el tiempo no lo permite',
  'natural-enemies': 'los enemigos naturales están actuando',
  cost: 'cuesta más de lo que evita',
  'loss-accepted': 'se acepta la pérdida',
  adviser: 'así lo aconsejó un asesor autorizado',
  other: 'otro motivo',
};
