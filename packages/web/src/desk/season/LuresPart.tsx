import type { SeasonView } from '@duskwatch/core';
import { monthText, shortDate } from '../../format/day.ts';
import { moneyText } from '../../format/money.ts';
import { Practices } from '../../shared/record/Practices.tsx';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { DueLures } from './DueLures.tsx';
import { Exports } from './Exports.tsx';
import { Scroll } from './Scroll.tsx';
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
  const head = [w.orderBy, w.insect, w.count, w.neededOn, ...(currency ? [w.cost] : [])];
  return (
    <section className="order-list" aria-labelledby="orders">
      <h2 id="orders">{w.orders}</h2>
      <p className="key">{w.ordersLead}</p>
      {orders.length === 0 ? (
        <p className="absent">{w.noOrders}</p>
      ) : (
        <>
          <Scroll label={w.orders}>
            <table className="figures">
              <thead>
                <tr>
                  {head.map((name) => (
                    <th key={name} scope="col" className={name === w.count || name === w.cost ? 'number' : undefined}>
                      {name}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {orders.map((order) => (
                  <tr key={`${order.insect} ${order.ordinal}`}>
                    <td className={order.late ? 'is-due' : undefined}>
                      {shortDate(order.orderBy)}
                      {order.late && ` (${w.late})`}
                    </td>
                    <th scope="row">{insectName(order.insect)}</th>
                    <td className="number">{order.lures}</td>
                    <td>{shortDate(order.neededOn)}</td>
                    {currency && <td className="number">{cost(order)}</td>}
                  </tr>
                ))}
              </tbody>
            </table>
          </Scroll>
          <Exports
            name={`orders-${view.season}`}
            head={head}
            rows={orders.map((order) => [
              order.orderBy,
              insectName(order.insect),
              order.lures,
              order.neededOn,
              ...(currency ? [order.cost?.low ?? null] : []),
            ])}
          />
        </>
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
      <Scroll label={w.needs}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{w.insect}</th>
              <th scope="col">{w.life}</th>
              {months.map((month) => (
                <th key={month} scope="col" className="number">
                  {monthName(month)}
                </th>
              ))}
              <th scope="col" className="number">
                {w.reserve}
              </th>
              <th scope="col" className="number">
                {w.total}
              </th>
            </tr>
          </thead>
          <tbody>
            {needs.map((need) => (
              <tr key={need.insect}>
                <th scope="row">{insectName(need.insect)}</th>
                <td>{lifeOf(need.insect)}</td>
                {months.map((month) => (
                  <td key={month} className="number">
                    {placedIn(need, month) || '–'}
                  </td>
                ))}
                <td className="number">{need.reserve}</td>
                <td className="number">
                  <b>{need.inAll}</b>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <Exports
        name={`lures-${view.season}`}
        head={[w.insect, ...months, w.reserve, w.total]}
        rows={needs.map((need) => [
          insectName(need.insect),
          ...months.map((month) => placedIn(need, month)),
          need.reserve,
          need.inAll,
        ])}
      />
    </section>
  );
}
