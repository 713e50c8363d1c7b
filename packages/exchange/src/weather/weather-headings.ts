/** Headings of weather, in English and Spanish, and the units that they name. */
import type { WeatherElement, WrittenPrecipitationUnit, WrittenTemperatureUnit } from '@duskwatch/core';

const plain = (heading: string): string =>
  heading
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[_.,()[\]/]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** Not the air's, or no reading: read for nothing here. */
const OF_OTHERS =
  /\b(soil|suelo|water|agua|dew|rocio|wet|canopy|leaf|hoja|internal|logger|feels|heat index|wind|chill|departure|depart|normal|attributes?|flag)\b/;
const OTHER_WEATHER =
  /^(humidity|rh|rel\w* hum\w*|humedad|wind|viento|gust|dew ?p\w*|pressure|bar\w*|solar|radiation|snow|snwd|gdd\w*|dd\d*|degree days?|et|evapo\w*|leaf wet\w*)\b/;
const LOW = /\b(min(imum|ima|imo)?|low(est)?|mn)\b|^tmin|^tmn/;
const HIGH = /\b(max(imum|ima|imo)?|high(est)?|mx)\b|^tmax|^tmx/;
const MEAN = /\b(avg|average|mean|med(ia|io)|prom(edio)?)\b|^tavg|^tmean/;
/** `High` and `Low` alone are weather; `High Street` and `Low gate` are places. */
const TEMPERATURE =
  /\btemp(s|erature|eratures|eratura|eraturas)?\b|^t ?_?(min|max|mn|mx|avg|mean|obs)\b|^(daily )?(low|high|min|max)( ?[°º]? ?[cf]| deg\w* ?[cf]?)?$/;
const RAIN = /\b(rain(fall)?|precip\w*|prcp|ppt|lluvia|pcpn?)\b/;
const NOT_A_SUM = /\b(rate|chance|prob\w*|days?|intensity)\b/;

/** What a heading says its column holds; null for weather that is not read, `undefined` for what is no weather. */
export function elementOf(heading: string): WeatherElement | null | undefined {
  const words = plain(heading);
  if (OTHER_WEATHER.test(words)) return null;
  if (RAIN.test(words)) return OF_OTHERS.test(words) || NOT_A_SUM.test(words) ? null : 'precipitation';
  if (!TEMPERATURE.test(words)) return undefined;
  if (OF_OTHERS.test(words)) return null;
  if (LOW.test(words)) return 'tmin';
  if (HIGH.test(words)) return 'tmax';
  return MEAN.test(words) ? null : 'temperature';
}

export function temperatureUnitIn(text: string): WrittenTemperatureUnit | null {
  if (/tenths?( of)? (a )?(deg|°|º)|0\.1 ?(°|º)?c\b/i.test(text)) return 'tenths-C';
  if (/[°º]\s*f\b|\bdeg(rees?)?\.?\s*f\b|\bfahrenheit\b|[_(\s,]f\)?$/i.test(text.trim())) return 'F';
  return /[°º]\s*c\b|\bdeg(rees?)?\.?\s*c\b|\b(celsius|centigrad\w*)\b|[_(\s,]c\)?$/i.test(text.trim()) ? 'C' : null;
}

export function precipitationUnitIn(text: string): WrittenPrecipitationUnit | null {
  if (/tenths?( of)? (a )?mm/i.test(text)) return 'tenths-mm';
  if (/\b(mm|millimet\w+|mil[ií]metros?)\b|_mm\b/i.test(text)) return 'mm';
  return /\b(in|inch(es)?|pulgadas?|pulg)\b|_in\b|"/i.test(text) ? 'in' : null;
}
