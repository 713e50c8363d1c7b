import type { Crop, LocalName, Sourced } from '../types.ts';

type Stages = Crop['stages'];

const stage = (id: string, en: string, es: string, from: number, to: number): Stages[number] => ({
  id,
  name: { en, es },
  bbch: [from, to],
});

const stagesSource: Sourced = {
  source: 'BBCH monograph, Meier 2001 (2nd edition) and 2018, from memory',
  standing: 'memory',
  note: {
    en: 'The principal stages are the monograph’s; where one plain word ends and the next begins is a choice made here.',
    es: 'Las etapas principales son las de la monografía; dónde termina una palabra corriente y empieza la siguiente se decidió aquí.',
  },
};

const cornToSilk: Stages = [
  stage('emergence', 'emergence', 'emergencia', 0, 12),
  stage('whorl', 'whorl', 'cogollo', 13, 50),
  stage('tassel', 'tassel', 'espiga', 51, 62),
  stage('silk', 'silk', 'jilote', 63, 66),
];

/** Sweet corn is picked at the milk stage (75), field corn when ripe (from 87): what lies before is dry silk. */
const corn = (harvestFrom: number): Stages => [
  ...cornToSilk,
  stage('dry-silk', 'dry silk', 'jilote seco', 67, harvestFrom - 1),
  stage('harvest', 'harvest', 'cosecha', harvestFrom, 99),
];

/** Crops picked for their fruit share one order of development and one numbering. */
const fruitVegetable: Stages = [
  stage('emergence', 'emergence', 'emergencia', 0, 9),
  stage('vegetative', 'leaf and stem growth', 'crecimiento vegetativo', 10, 59),
  stage('flowering', 'flowering', 'floración', 60, 69),
  stage('fruiting', 'unripe fruit', 'fruto verde', 70, 79),
  stage('ripening', 'ripening', 'maduración', 80, 88),
  stage('harvest', 'harvest', 'cosecha', 89, 99),
];

const potato: Stages = [
  stage('emergence', 'emergence', 'emergencia', 0, 9),
  stage('vegetative', 'leaf and stem growth', 'crecimiento vegetativo', 10, 39),
  stage('tuber-formation', 'tuber formation', 'tuberización', 40, 59),
  stage('flowering', 'flowering', 'floración', 60, 69),
  stage('tuber-bulking', 'tuber bulking', 'llenado de tubérculos', 70, 90),
  stage('vine-death', 'dying vines', 'senescencia', 91, 96),
  stage('harvest', 'harvest', 'cosecha', 97, 99),
];

const brassica: Stages = [
  stage('emergence', 'emergence', 'emergencia', 0, 9),
  stage('vegetative', 'leaf growth', 'crecimiento vegetativo', 10, 40),
  stage('heading', 'heading', 'formación de cabeza', 41, 48),
  stage('harvest', 'harvest', 'cosecha', 49, 50),
  stage('bolting', 'bolting', 'espigado', 51, 99),
];

/** Grown for leaves, without a head. */
const leafy: Stages = [
  stage('emergence', 'emergence', 'emergencia', 0, 9),
  stage('vegetative', 'leaf growth', 'crecimiento vegetativo', 10, 48),
  stage('harvest', 'harvest', 'cosecha', 49, 50),
  stage('bolting', 'bolting', 'espigado', 51, 99),
];

const bulb: Stages = [
  stage('emergence', 'emergence', 'emergencia', 0, 9),
  stage('vegetative', 'leaf growth', 'crecimiento vegetativo', 10, 40),
  stage('bulbing', 'bulb growth', 'formación de bulbo', 41, 48),
  stage('harvest', 'harvest', 'cosecha', 49, 50),
  stage('bolting', 'bolting', 'espigado', 51, 99),
];

const pulse: Stages = [
  stage('emergence', 'emergence', 'emergencia', 0, 9),
  stage('vegetative', 'leaf and stem growth', 'crecimiento vegetativo', 10, 59),
  stage('flowering', 'flowering', 'floración', 60, 69),
  stage('pods', 'growing pods', 'llenado de vainas', 70, 79),
  stage('harvest', 'harvest', 'cosecha', 80, 99),
];

const apple: Stages = [
  stage('dormant', 'dormant', 'reposo', 0, 0),
  stage('bud-break', 'bud break', 'brotación', 1, 52),
  stage('pre-bloom', 'flower buds', 'botón floral', 53, 59),
  stage('flowering', 'flowering', 'floración', 60, 69),
  stage('fruiting', 'unripe fruit', 'fruto verde', 70, 79),
  stage('ripening', 'ripening', 'maduración', 80, 86),
  stage('harvest', 'harvest', 'cosecha', 87, 90),
  stage('leaf-fall', 'leaf fall', 'caída de hojas', 91, 99),
];

const crop = (id: string, name: LocalName, stages: Stages): Crop => ({ id, name, stages, stagesSource });

export const crops: readonly Crop[] = [
  crop('sweet-corn', { en: 'sweet corn', es: 'maíz dulce' }, corn(75)),
  crop('field-corn', { en: 'field corn', es: 'maíz de grano' }, corn(87)),
  crop('tomato', { en: 'tomato', es: 'tomate' }, fruitVegetable),
  crop('pepper', { en: 'pepper', es: 'chile (pimiento)' }, fruitVegetable),
  crop('potato', { en: 'potato', es: 'papa' }, potato),
  crop('squash', { en: 'squash', es: 'calabacita (calabaza)' }, fruitVegetable),
  crop('pumpkin', { en: 'pumpkin', es: 'calabaza de cáscara dura' }, fruitVegetable),
  crop('brassicas', { en: 'brassicas', es: 'brásicas (coles)' }, brassica),
  crop('lettuce', { en: 'lettuce', es: 'lechuga' }, brassica),
  crop('beet', { en: 'beet', es: 'betabel' }, leafy),
  crop('onion', { en: 'onion', es: 'cebolla' }, bulb),
  crop('garlic', { en: 'garlic', es: 'ajo' }, bulb),
  crop('leek', { en: 'leek', es: 'poro (puerro)' }, leafy),
  crop('peas', { en: 'peas', es: 'chícharo' }, pulse),
  crop('beans', { en: 'beans', es: 'frijol y ejote' }, pulse),
  crop('eggplant', { en: 'eggplant', es: 'berenjena' }, fruitVegetable),
  crop('apple', { en: 'apple', es: 'manzano' }, apple),
];
