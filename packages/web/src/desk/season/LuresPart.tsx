import type { SeasonView } from '@duskwatch/core';
import { monthText, shortDate } from '../../format/day.ts';
import { moneyText } from '../../format/money.ts';
import { Practices } from '../../shared/record/Practices.tsx';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { Table } from '../../ui/table/Table.tsx';
import { DueLures } from './DueLures.tsx';
import { Stock } from './Stock.tsx';

/** Lures: what the season takes, what to order by when, what lies in store, what is due. */
export function LuresPart({ view }: { view: SeasonView }) {
  return (
    <>
      <Orders view={view} />
      <Needs view={view} />
      <Stock view={view} />
      <DueLures view={view} />
      <Practices acts={['handling-lures', 'handling-moths']} title={seasonWords.cautions} />
    </>
  );
}

function Orders({ view }: { view: SeasonView }) {
  const w = seasonWords.lures;
  const { orders } = view.lures;
  const currency = view.budget?.currency ?? null;
  const cost = (order: (typeof orders)[number]): string => {
    if (currency === null || order.cost === null) return seasonWords.budget.unknown;
    const { low, high } = order.cost;
    const [from, to] = [moneyText(low, currency), moneyText(high, currency)];
    return from === to ? from : seasonWords.budget.range(from, to);
  };
  return (
    <section className="order-list" aria-labelledby="orders">
      <h2 id="orders">{w.orders}</h2>
      <p className="key">{w.ordersLead}</p>
      {orders.length === 0 ? (
        <p className="absent">{w.noOrders}</p>
      ) : (
        <Table
          label={w.orders}
          rows={orders}
          keyOf={({ insect, ordinal }) => `${insect} ${ordinal}`}
          columns={[
            {
              head: w.orderBy,
              value: ({ orderBy }) => orderBy,
              cell: ({ orderBy, late }) => `${shortDate(orderBy)}${late ? ` (${w.late})` : ''}`,
              className: ({ late }) => (late ? 'is-due' : undefined),
            },
            { head: w.insect, value: ({ insect }) => insectName(insect), names: true },
            { head: w.count, value: ({ lures }) => lures, number: true },
            { head: w.neededOn, value: ({ neededOn }) => neededOn, cell: ({ neededOn }) => shortDate(neededOn) },
            ...(currency
              ? [
                  {
                    head: w.cost,
                    value: (order: (typeof orders)[number]) => order.cost?.low ?? null,
                    cell: cost,
                    number: true,
                  },
                ]
              : []),
          ]}
        />
      )}
      {view.lures.unknownLines.length > 0 && <p className="is-due">{w.unknown(view.lures.unknownLines.length)}</p>}
    </section>
  );
}

function Needs({ view }: { view: SeasonView }) {
  const w = seasonWords.lures;
  const { needs, months } = view.lures;
  if (needs.length === 0) return null;
  const monthName = (month: string) => `${monthText(`${month}-01`)} ${month.slice(0, 4)}`;
  const lifeOf = (insect: string) => {
    const lives = view.lines
      .filter((line) => line.insect === insect)
      .map(({ lureLife }) => `${lureLife.days} (${w.lifeWhy[lureLife.why]})`);
    return [...new Set(lives)].join(', ');
  };
  const placedIn = (need: (typeof needs)[number], month: string) => need.months.find((each) => each.month === month)?.lures ?? 0;
  return (
    <section aria-labelledby="needs">
      <h2 id="needs">{w.needs}</h2>
      <p className="key">{w.needsLead}</p>
      <Table
        label={w.needs}
        rows={needs}
        keyOf={({ insect }) => insect}
        columns={[
          { head: w.insect, value: ({ insect }) => insectName(insect), names: true },
          { head: w.life, value: ({ insect }) => lifeOf(insect) },
          ...months.map((month) => ({
            head: monthName(month),
            value: (need: (typeof needs)[number]) => placedIn(need, month),
            cell: (need: (typeof needs)[number]) => placedIn(need, month) || '–',
            number: true,
          })),
          { head: w.reserve, value: ({ reserve }) => reserve, number: true },
          { head: w.total, value: ({ inAll }) => inAll, cell: ({ inAll }) => <b>{inAll}</b>, number: true },
        ]}
      />
    </section>
  );
}
