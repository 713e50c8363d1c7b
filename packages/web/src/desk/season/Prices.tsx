import { type CostKind, designFacts, type PricedItem, type SeasonBudgetView, type TrapDesign } from '@duskwatch/core';
import { moneyText } from '../../format/money.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { seasonWords } from '../../text/season.ts';
import { Field } from '../../ui/Field.tsx';
import { useThing } from './money-in-words.ts';
import { useHeld, useWrite } from './useDecide.ts';

/** The user's own prices, in place: an empty box is common practice where there is a figure, and else unknown. */
export function Prices({ budget }: { budget: SeasonBudgetView }) {
  const w = seasonWords.budget;
  const mayWrite = useMayWrite();
  const held = useHeld('prices');
  const write = useWrite('prices');
  const thing = useThing();
  const { currency, askable } = budget;
  if (!mayWrite('prices')) return null;
  const save = (item: PricedItem, of: string, text: string): boolean => {
    const price = text.trim() === '' ? null : Number(text.trim().replace(',', '.'));
    if (price !== null && !(price >= 0 && price <= 100_000_000)) return false;
    write(`${item}|${of}`, (before) => {
      if (price !== null) return { item, of, price, currency, note: before?.note ?? null };
      // A price in another currency is not shown in the box: leaving the box empty says nothing of it.
      return before && before.currency !== currency ? before : null;
    });
    return true;
  };
  return (
    <fieldset className="prices no-print">
      <legend>{w.prices}</legend>
      <p className="key">{currency === 'USD' ? w.pricesLead(currency) : w.pricesLeadOther(currency)}</p>
      <div className="price-boxes">
        {askable.map(({ item, of }) => {
          const now = held.get(`${item}|${of}`)?.value;
          const value = now?.currency === currency ? String(now.price) : '';
          const practice = item === 'trap' && currency === 'USD' ? (designFacts(of as TrapDesign)?.costUsd ?? null) : null;
          return (
            <Field
              key={`${item} ${of}`}
              label={thing(item as CostKind, of)}
              hint={
                practice
                  ? w.practice(
                      practice[0] === practice[1]
                        ? moneyText(practice[0], currency)
                        : w.range(moneyText(practice[0], currency), moneyText(practice[1], currency)),
                    )
                  : undefined
              }
              className="small"
            >
              {(box) => (
                <input
                  {...box}
                  key={value}
                  type="text"
                  inputMode="decimal"
                  size={8}
                  defaultValue={value}
                  placeholder={practice ? '' : w.unknown}
                  onBlur={(event) => {
                    if (!save(item, of, event.currentTarget.value)) event.currentTarget.value = value;
                  }}
                  onKeyDown={(event) => {
                    if (event.key === 'Enter') event.currentTarget.blur();
                  }}
                />
              )}
            </Field>
          );
        })}
      </div>
    </fieldset>
  );
}
