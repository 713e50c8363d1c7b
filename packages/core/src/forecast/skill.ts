/** How well dates were forecast in past seasons of real weather; see docs/forecast-skill.md. */
import { skillFigures } from './skill-figures.ts';

export const FORECAST_SKILL = {
  series: 'Seattle, New York',
  from: 2012,
  to: 2015,
  source: 'NOAA; vega-datasets',
  figures: skillFigures,
} as const;
