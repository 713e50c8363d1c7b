import type { BudgetRow, SeasonBudgetView, SeasonView, Total } from '@duskwatch/core';
import { moneyText } from '../../format/money.ts';
import { countText } from '../../format/number.ts';
import { insectName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { seasonWords } from '../../text/season.ts';
import { useWording } from '../../text/wording.ts';
import { Assumptions } from './Assumptions.tsx';
import { Exports } from './Exports.tsx';
import { totalText, useThing } from './money-in-words.ts';
import { Prices } from './Prices.tsx';
import { Replaced } from './Replaced.tsx';
import { Scroll } from './Scroll.tsx';

/** What the season takes and costs, by what is bought, and per farm, field and insect. */
export function BudgetPart({ view }: { view: SeasonView }) {
  const w = seasonWords.budget;
  const { budget } = view;
  if (budget === null) return <p className="absent">{w.hidden}</p>;
  return (
    <>
      <Sum budget={budget} />
      <Items view={view} budget={budget} />
      <Prices budget={budget} />
      <Replaced budget={budget} />
      <TrapsNeeded budget={budget} />
      <Totals id="by-farm" title={w.byFarm} budget={budget} rows={budget.byFarm.map((row) => [row.farm, row] as const)} />
      <Totals
        id="by-insect"
        title={w.byInsect}
        budget={budget}
        rows={budget.byInsect.map((row) => [insectName(row.insect), row] as const)}
      />
      <Totals
        id="by-field"
        title={w.byField}
        budget={budget}
        rows={budget.byField.map((row) => [`${row.name}, ${row.farm}`, row] as const)}
      />
      <Assumptions view={view} />
    </>
  );
}

function Sum({ budget }: { budget: SeasonBudgetView }) {
  const w = seasonWords.budget;
  const thing = useThing();
  const missing = budget.missing.map(({ kind, of, why }) =>
    why === 'price' ? w.missingPrice(thing(kind, of)) : w.missingQuantity(thing(kind, of)),
  );
  return (
    <section aria-labelledby="sum">
      <h2 id="sum" className="season-total">
        {w.total} <b>{totalText(budget.total, budget.currency)}</b>
      </h2>
      {missing.length > 0 && (
        <p className="is-due">
          {w.missing}: {[...new Set(missing)].join('; ')}.
        </p>
      )}
      {budget.otherCurrency.length > 0 && (
        <p className="is-due">
          {w.otherCurrency(
            budget.otherCurrency
              .map(({ item, price, currency }) => `${recordWords.items[item]} ${moneyText(price, currency)}`)
              .join(', '),
          )}
        </p>
      )}
    </section>
  );
}

function Items({ view, budget }: { view: SeasonView; budget: SeasonBudgetView }) {
  const w = seasonWords.budget;
  const thing = useThing();
  const { currency, rows } = budget;
  const quantity = ({ quantity: n, kind }: BudgetRow): string => {
    if (n === null) return w.unknown;
    return kind === 'driving-hour' || kind === 'driving-km' ? `${countText(n)} ${w.units[kind]}` : countText(n);
  };
  return (
    <section aria-labelledby="items">
      <h2 id="items" className="unseen">
        {w.what}
      </h2>
      <Scroll label={w.what}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{w.what}</th>
              <th scope="col" className="number">
                {w.quantity}
              </th>
              <th scope="col" className="number">
                {w.price}
              </th>
              <th scope="col" className="number">
                {w.sum}
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.kind} ${row.of}`}>
                <th scope="row">{thing(row.kind, row.of)}</th>
                <td className="number">{quantity(row)}</td>
                <td className="number">
                  {row.price ? priceText(row.price, currency) : <span className="is-due">{w.unknown}</span>}
                </td>
                <td className="number">
                  {row.low === null || row.high === null
                    ? w.unknown
                    : totalText({ low: row.low, high: row.high, atLeast: false }, currency)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p className="key">{w.drivingNote}</p>
      <Exports
        name={`budget-${view.season}`}
        head={[w.what, w.quantity, w.price, w.sum]}
        rows={rows.map((row) => [thing(row.kind, row.of), row.quantity, row.price?.low ?? null, row.low])}
      />
    </section>
  );
}

function priceText({ low, high, standing }: NonNullable<BudgetRow['price']>, currency: string) {
  const w = seasonWords.budget;
  const said = totalText({ low, high, atLeast: false }, currency);
  return (
    <>
      {said}
      <small>{standing === 'user' ? w.yours : w.practiceShort}</small>
    </>
  );
}

function TrapsNeeded({ budget }: { budget: SeasonBudgetView }) {
  const w = seasonWords.budget;
  const wording = useWording();
  const counted = { stock: w.fromStock, 'hung-before': w.fromHung };
  if (budget.traps.length === 0) return null;
  return (
    <section aria-labelledby="traps-needed">
      <h2 id="traps-needed">{w.traps}</h2>
      <Scroll label={w.traps}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{w.design}</th>
              {[w.needed, w.kept, w.worn, w.bought].map((name) => (
                <th key={name} scope="col" className="number">
                  {name}
                </th>
              ))}
              <th scope="col">{w.from}</th>
            </tr>
          </thead>
          <tbody>
            {budget.traps.map(({ design, needed, kept, wornOut, bought, from }) => (
              <tr key={design}>
                <th scope="row">{design ? wording.design[design] : seasonWords.notKnown}</th>
                <td className="number">{needed}</td>
                <td className="number">{kept}</td>
                <td className="number">{wornOut}</td>
                <td className="number">{bought}</td>
                <td>{from ? counted[from] : w.fromNone}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

function Totals(props: { id: string; title: string; budget: SeasonBudgetView; rows: readonly (readonly [string, Total])[] }) {
  const { id, title, budget, rows } = props;
  return (
    <details className="behind">
      <summary id={id}>{title}</summary>
      <Scroll label={title}>
        <table className="figures">
          <caption className="unseen">{title}</caption>
          <tbody>
            {[...rows]
              .sort((a, b) => b[1].low - a[1].low)
              .map(([name, total]) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td className="number">{totalText(total, budget.currency)}</td>
                </tr>
              ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
