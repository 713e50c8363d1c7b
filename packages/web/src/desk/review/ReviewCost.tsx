import { type SeasonWork, seasonCost } from '@duskwatch/core';
import { useState } from 'react';
import { locale } from '../../text/language.ts';
import { reviewWords } from '../../text/review.ts';
import { Field } from '../../ui/Field.tsx';

const w = reviewWords.review;
const USUAL_CURRENCY = 'USD';
const KEPT = 'duskwatch.prices';
const PRICED = ['trap', 'lure', 'visit', 'sample'] as const;

type Texts = Readonly<Partial<Record<(typeof PRICED)[number] | 'currency', string>>>;

function remembered(): Texts {
  try {
    return JSON.parse(localStorage.getItem(KEPT) ?? '{}') as Texts;
  } catch {
    return {};
  }
}

function keep(texts: Texts): void {
  try {
    localStorage.setItem(KEPT, JSON.stringify(texts));
  } catch {}
}

function priceOf(text: string | undefined): number | null {
  const value = Number((text ?? '').trim().replace(',', '.'));
  return (text ?? '').trim() !== '' && Number.isFinite(value) && value >= 0 ? value : null;
}

/** What the season's watching cost for each decision, once somebody says what things cost. */
export function ReviewCost({ work }: { work: SeasonWork }) {
  const [texts, setTexts] = useState(remembered);
  const currency = /^[A-Z]{3}$/.test(texts.currency ?? '') ? texts.currency! : USUAL_CURRENCY;
  const write = (name: keyof Texts, text: string) => {
    const next = { ...texts, [name]: text };
    setTexts(next);
    keep(next);
  };
  const { trap, lure, visit, sample } = texts;
  const cost = seasonCost(work, {
    currency,
    trap: priceOf(trap),
    lure: priceOf(lure),
    visit: priceOf(visit),
    sample: priceOf(sample),
  });
  const money = (amount: number) => new Intl.NumberFormat(locale, { style: 'currency', currency }).format(amount);
  return (
    <section className="review-cost">
      <h3>{w.cost}</h3>
      <p>{w.work(work)}</p>
      <p role="status">
        {!cost.known
          ? w.costMissing(cost.missing.map((item) => w.prices[item]).join('; '))
          : cost.perDecision === null
            ? w.costNone(money(cost.total))
            : w.costTotal(money(cost.total), money(cost.perDecision))}
      </p>
      <div className="visit-prices">
        {PRICED.map((item) => (
          <Field key={item} label={w.prices[item]} className="small">
            {(box) => (
              <input
                {...box}
                inputMode="decimal"
                value={texts[item] ?? ''}
                onChange={(event) => write(item, event.currentTarget.value)}
              />
            )}
          </Field>
        ))}
        <Field label={w.currency} className="small">
          {(box) => (
            <input
              {...box}
              maxLength={3}
              value={texts.currency ?? USUAL_CURRENCY}
              onChange={(event) => write('currency', event.currentTarget.value.toUpperCase())}
            />
          )}
        </Field>
      </div>
      <p className="key">{w.costLead}</p>
    </section>
  );
}
