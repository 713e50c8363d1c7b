/** What to take along and to do when a trap is hung, design by design. */
import type { TrapDesign } from '../../records/schema.ts';
import { COMMON_PRACTICE } from '../sources/sources.ts';
import type { LocalText, Sourced } from '../types.ts';

export interface HangingFacts extends Sourced {
  readonly materials: readonly LocalText[];
  readonly steps: readonly LocalText[];
}

const text = (en: string, es: string): LocalText => ({ en, es });

const ALWAYS = {
  materials: [
    text('label with the trap’s code', 'etiqueta con el código de la trampa'),
    text('flagging tape', 'cinta de señalización'),
    text(
      'lures of each species in a bag of its own, in a cool box',
      'atrayentes de cada especie en su propia bolsa, en una hielera',
    ),
    text('disposable gloves, a fresh pair for each species', 'guantes desechables, un par nuevo para cada especie'),
    text('tape measure, pencil, phone', 'cinta métrica, lápiz, teléfono'),
    text('water, hat, bright clothes', 'agua, sombrero, ropa vistosa'),
  ],
  last: [
    text('Put the label where it is read from the track.', 'Coloque la etiqueta donde se lea desde el camino.'),
    text('Tie flagging tape at a driver’s eye height.', 'Ate la cinta a la altura de los ojos de quien maneja.'),
    text(
      'Write down the day, the place and the lure’s life; scan the label once.',
      'Anote el día, el lugar y la vida del atrayente; escanee la etiqueta una vez.',
    ),
    text('Take the empty lure packs and the gloves away with you.', 'Llévese los empaques vacíos y los guantes.'),
  ],
} as const;

const POST_MATERIALS = [
  text('post, driver, work gloves and eye protection', 'poste, hincador, guantes de trabajo y protección para los ojos'),
];
const POST_STEP = text(
  'Drive the post first, and only then bring the trap.',
  'Clave primero el poste y solo después traiga la trampa.',
);
const HEIGHT_STEP = text('Measure from the ground to the opening.', 'Mida del suelo a la abertura.');
const LURE_STEP = text(
  'Fresh gloves, then the lure: at the opening, one species to a trap.',
  'Guantes nuevos y luego el atrayente: en la abertura, una especie por trampa.',
);

const own: Readonly<Record<TrapDesign, { readonly materials: readonly LocalText[]; readonly steps: readonly LocalText[] }>> = {
  bucket: {
    materials: [
      text('bucket, funnel, lid, lure cage and hanger', 'cubeta, embudo, tapa, canastilla del atrayente y colgador'),
      text('stake or stand where no branch serves', 'estaca o soporte donde no sirva una rama'),
    ],
    steps: [
      text('Hang it level, so that the funnel stands open all round.', 'Cuélguela a nivel, con el embudo libre alrededor.'),
      LURE_STEP,
    ],
  },
  'mesh-cone': {
    materials: [text('mesh cone with its collecting top, ties', 'cono de malla con su colector, ataduras'), ...POST_MATERIALS],
    steps: [
      POST_STEP,
      text('Tie the cone so that wind neither folds nor turns it.', 'Ate el cono de modo que el viento no lo doble ni lo gire.'),
      HEIGHT_STEP,
      LURE_STEP,
    ],
  },
  'wire-cone': {
    materials: [
      text('wire cone, collecting jar, wire or clamps', 'cono de alambre, frasco colector, alambre o abrazaderas'),
      ...POST_MATERIALS,
    ],
    steps: [
      POST_STEP,
      text(
        'Fix the cone to the pole and the jar to its top; look for gaps.',
        'Fije el cono al poste y el frasco arriba; busque huecos.',
      ),
      HEIGHT_STEP,
      LURE_STEP,
    ],
  },
  delta: {
    materials: [
      text('folded body, sticky floor and a spare one, hanger', 'cuerpo doblado, piso adhesivo y uno de repuesto, colgador'),
    ],
    steps: [
      text(
        'Slide the floor in with its sticky side up, and write the day on it.',
        'Deslice el piso con el adhesivo hacia arriba y anote el día en él.',
      ),
      text('Hang it so that wind blows through both ends.', 'Cuélguela de modo que el viento pase por ambos extremos.'),
      text('Fresh gloves, then the lure: one species to a trap.', 'Guantes nuevos y luego el atrayente: una especie por trampa.'),
    ],
  },
  other: {
    materials: [text('the trap with all its parts', 'la trampa con todas sus piezas')],
    steps: [
      text('Hang it as its maker says.', 'Cuélguela como dice su fabricante.'),
      text('Fresh gloves, then the lure: one species to a trap.', 'Guantes nuevos y luego el atrayente: una especie por trampa.'),
    ],
  },
};

export const hangingFacts = (design: TrapDesign): HangingFacts => ({
  materials: [...own[design].materials, ...ALWAYS.materials],
  steps: [...own[design].steps, ...ALWAYS.last],
  ...COMMON_PRACTICE,
});
