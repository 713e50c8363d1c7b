/** The weather services that days can be fetched from: what they give, on whose terms, and how often they may be asked. */
import type { WeatherService, WeatherSourceKind } from './schema.ts';

export interface ServiceTold {
  /** What its days are; null: whatever is there. */
  readonly kind: WeatherSourceKind | null;
  readonly gives: 'measured' | 'forecast' | 'measured and forecast' | 'estimated and forecast';
  /** Where it is asked; null: an address or a folder of the program's own. */
  readonly origin: string | null;
  /** Where its terms are; null: the program's own. */
  readonly terms: string | null;
  /** What must stand beside its data; null: nothing. */
  readonly credit: string | null;
  /** It is asked no sooner again than this many hours after it answered; later where it says so. */
  readonly hoursBetween: number;
}

/** Origins and terms by the services' public documentation. Hours between requests: own figures, on the polite side. */
export const weatherServices: { readonly [S in WeatherService]: ServiceTold } = {
  'noaa-daily': {
    kind: 'station',
    gives: 'measured',
    origin: 'https://www.ncei.noaa.gov',
    terms: 'https://www.ncei.noaa.gov/access/services/data/v1',
    credit: 'NOAA National Centers for Environmental Information (public domain)',
    hoursBetween: 12,
  },
  'us-forecast': {
    kind: 'grid',
    gives: 'forecast',
    origin: 'https://api.weather.gov',
    terms: 'https://www.weather.gov/documentation/services-web-api',
    credit: 'US National Weather Service (public domain)',
    hoursBetween: 3,
  },
  'norway-forecast': {
    kind: 'grid',
    gives: 'forecast',
    origin: 'https://api.met.no',
    terms: 'https://api.met.no/doc/TermsOfService',
    credit: 'MET Norway (CC BY 4.0)',
    hoursBetween: 3,
  },
  'open-meteo': {
    kind: 'grid',
    gives: 'estimated and forecast',
    origin: 'https://api.open-meteo.com',
    terms: 'https://open-meteo.com/en/terms',
    credit: 'Open-Meteo.com (CC BY 4.0; without a key for non-commercial use alone)',
    hoursBetween: 6,
  },
  address: { kind: null, gives: 'measured', origin: null, terms: null, credit: null, hoursBetween: 1 },
  folder: { kind: null, gives: 'measured', origin: null, terms: null, credit: null, hoursBetween: 0 },
};
