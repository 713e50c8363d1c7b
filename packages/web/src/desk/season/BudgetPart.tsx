import type { BudgetRow, SeasonBudgetView, SeasonView, Total } from '@duskwatch/core';
import { moneyText } from '../../format/money.ts';
import { countText } from '../../format/number.ts';
import { insectName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { seasonWords } from '../../text/season.ts';
import { useWording } from '../../text/wording.ts';
import { Folded } from '../../ui/Folded.tsx';
import { Table } from '../../ui/table/Table.tsx';
import { Assumptions } from './Assumptions.tsx';
import { totalText, useThing } from './money-in-words.ts';
import { Prices } from './Prices.tsx';
import { Replaced } from './Replaced.tsx';

/** What the season takes and costs, by what is bought, and per farm, field and insect. */
export function BudgetPart({ view }: { view: SeasonView }) {
  const w = seasonWords.budget;
  const { budget } = view;
  if (budget === null) return <p className="absent">{w.hidden}</p>;
  return (
    <>
      <Sum budget={budget} />
      <Items budget={budget} />
      <Prices budget={budget} />
      <Replaced budget={budget} />
      <TrapsNeeded budget={budget} />
      <Totals
        title={w.byFarm}
        of={seasonWords.plan.farm}
        budget={budget}
        rows={budget.byFarm.map((row) => [row.farm, row] as const)}
      />
      <Totals
        title={w.byInsect}
        of={seasonWords.plan.insects}
        budget={budget}
        rows={budget.byInsect.map((row) => [insectName(row.insect), row] as const)}
      />
      <Totals
        title={w.byField}
        of={seasonWords.plan.area}
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

function Items({ budget }: { budget: SeasonBudgetView }) {
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
      <Table
        label={w.what}
        rows={rows}
        keyOf={({ kind, of }) => `${kind} ${of}`}
        columns={[
          { head: w.what, value: ({ kind, of }) => thing(kind, of), names: true },
          { head: w.quantity, value: (row) => row.quantity, cell: quantity, number: true },
          {
            head: w.price,
            value: ({ price }) => price?.low ?? null,
            cell: ({ price }) => (price ? priceText(price, currency) : <span className="is-due">{w.unknown}</span>),
            number: true,
          },
          {
            head: w.sum,
            value: ({ low }) => low,
            cell: ({ low, high }) =>
              low === null || high === null ? w.unknown : totalText({ low, high, atLeast: false }, currency),
            number: true,
          },
        ]}
      />
      <p className="key">{w.drivingNote}</p>
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
      <Table
        label={w.traps}
        rows={budget.traps}
        keyOf={({ design }) => design ?? ''}
        columns={[
          {
            head: w.design,
            value: ({ design }) => (design ? wording.design[design] : seasonWords.notKnown),
            names: true,
          },
          { head: w.needed, value: ({ needed }) => needed, number: true },
          { head: w.kept, value: ({ kept }) => kept, number: true },
          { head: w.worn, value: ({ wornOut }) => wornOut, number: true },
          { head: w.bought, value: ({ bought }) => bought, number: true },
          { head: w.from, value: ({ from }) => (from ? counted[from] : w.fromNone) },
        ]}
      />
    </section>
  );
}

function Totals(props: { title: string; of: string; budget: SeasonBudgetView; rows: readonly (readonly [string, Total])[] }) {
  const { title, of, budget, rows } = props;
  const w = seasonWords.budget;
  return (
    <Folded title={title}>
      <Table
        label={title}
        rows={[...rows].sort((a, b) => b[1].low - a[1].low)}
        keyOf={([name]) => name}
        columns={[
          { head: of, value: ([name]) => name, names: true },
          { head: w.sum, value: ([, { low }]) => low, cell: ([, total]) => totalText(total, budget.currency), number: true },
        ]}
      />
    </Folded>
  );
}
