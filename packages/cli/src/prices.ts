import { ok, type Prices, type Result, refuse } from '@duskwatch/core';
import { optionProblem } from './outcome.ts';

const KINDS = ['trap', 'lure', 'visit', 'sample'] as const;
const PRICE = /^(trap|lure|visit|sample)=(\d+(?:\.\d+)?)$/;

/** Prices as the option spells them: `USD trap=30 lure=6 visit=2.50 sample=8`. Any of the four may be left out. */
export function pricesFrom(text: string): Result<Prices> {
  const [currency = '', ...parts] = text.trim().split(/[\s,]+/);
  const found = parts.map((part) => PRICE.exec(part));
  const wrong = currency === '' || currency.includes('=') ? currency : parts[found.indexOf(null)];
  if (wrong !== undefined)
    return refuse(
      optionProblem(
        '--prices',
        wrong,
        `a currency, then prices of ${KINDS.join(', ')}`,
        'Write them as "USD trap=30 lure=6 visit=2.50 sample=8".',
      ),
    );
  const given = new Map(found.map((match) => [match![1], Number(match![2])]));
  const price = (kind: (typeof KINDS)[number]) => given.get(kind) ?? null;
  return ok({ currency, trap: price('trap'), lure: price('lure'), visit: price('visit'), sample: price('sample') });
}
