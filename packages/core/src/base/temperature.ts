/** 1 °C·d = 1.8 °F·d: a degree-day is a temperature difference, so no offset applies. */
const FAHRENHEIT_PER_CELSIUS = 1.8;

export type TemperatureUnit = 'C' | 'F';

export function celsius(value: number, unit: TemperatureUnit): number {
  return unit === 'C' ? value : (value - 32) / FAHRENHEIT_PER_CELSIUS;
}

export function fromCelsius(valueC: number, unit: TemperatureUnit): number {
  return unit === 'C' ? valueC : valueC * FAHRENHEIT_PER_CELSIUS + 32;
}

/** Degree-days in °C·d, from a figure in the given unit. */
export function degreeDaysC(value: number, unit: TemperatureUnit): number {
  return unit === 'C' ? value : value / FAHRENHEIT_PER_CELSIUS;
}

/** A sum of heat in one unit, in another. */
export const degreeDaysFrom = (value: number, unit: TemperatureUnit, wanted: TemperatureUnit): number =>
  unit === wanted ? value : degreeDaysIn(degreeDaysC(value, unit), wanted);

/** A figure in °C·d, in the unit asked for. */
export function degreeDaysIn(valueC: number, unit: TemperatureUnit): number {
  return unit === 'C' ? valueC : valueC * FAHRENHEIT_PER_CELSIUS;
}
