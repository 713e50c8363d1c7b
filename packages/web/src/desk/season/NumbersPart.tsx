import type { SeasonView, TrapNumbers } from '@duskwatch/core';
import { useState } from 'react';
import { percentText, rateText } from '../../format/number.ts';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { useWording } from '../../text/wording.ts';
import { Cited } from '../../ui/Cited.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { Table } from '../../ui/table/Table.tsx';
import { List } from './List.tsx';
import { NumbersPicture } from './NumbersPicture.tsx';

/** How many traps are enough, insect by insect and rule by rule: what is missed and what is called in vain, in plain words. */
export function NumbersPart({ view }: { view: SeasonView }) {
  const w = seasonWords.numbers;
  return (
    <>
      <p className="season-lead">{w.lead}</p>
      {view.numbers.length === 0 && <p className="absent">{w.none}</p>}
      {view.numbers.map((numbers) => (
        <Numbers key={numbers.key} numbers={numbers} />
      ))}
      <List name={`${w.table}, ${view.season}`} {...listOf(view)} />
    </>
  );
}

/** More traps than these are told of only where they are needed; the statistics hold all. */
const MOST_SHOWN = 5;
/** A difference in a chance that nobody sees. */
const HARDLY = 0.005;

/** Chances as so many of a hundred, which people compare more easily than shares. */
const ofHundred = (share: number): string => percentText(share).replace(/\s*%$/, '');

function Numbers({ numbers }: { numbers: TrapNumbers }) {
  const w = seasonWords.numbers;
  const wording = useWording();
  const { insect, design, rule, planned, rows, mostTraps, aboveShare, belowShare, riskMissed, riskFalse } = numbers;
  const title = w.of(insectName(insect), wording.design[design], rateText(rule.thresholdPerNight));
  const id = `numbers-${numbers.key.replaceAll(/\W+/g, '-')}`;
  const own = rows.filter((row) => row.nightsBetweenChecks === planned.nightsBetweenChecks);
  const told = own.find(({ traps }) => traps === (planned.isEnough ? planned.enough : mostTraps));
  return (
    <section className="numbers" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <p>
        <b>{planned.isEnough ? w.enough(planned.enough, planned.nightsBetweenChecks) : w.notEnough(mostTraps)}</b>
      </p>
      {told && (
        <p>
          {w.plain(
            told.traps,
            ofHundred(told.missed),
            percentText(aboveShare),
            ofHundred(told.falseAlarm),
            percentText(belowShare),
          )}
        </p>
      )}
      <Table
        label={`${title}: ${w.nights(planned.nightsBetweenChecks)}`}
        className="numbers-plain"
        rows={own.filter(({ traps }) => traps <= Math.max(MOST_SHOWN, planned.isEnough ? planned.enough + 1 : 0))}
        keyOf={({ traps }) => traps}
        columns={[
          { head: w.traps, value: ({ traps }) => traps, names: true, number: true },
          { head: w.tables.missed, figure: [({ missed }) => missed, ofHundred] },
          { head: w.tables.vain, figure: [({ falseAlarm }) => falseAlarm, ofHundred] },
          { head: w.tables.enough, value: ({ enough }) => (enough ? w.yes : w.no) },
        ]}
      />
      {own.some(({ missed }, index) => missed > (own[index - 1]?.missed ?? 1) + HARDLY) && <p className="basis">{w.steps}</p>}
      <p className="basis">{w.accept(ofHundred(riskMissed), ofHundred(riskFalse))}</p>
      <Folded title={w.statistics}>
        <Statistics numbers={numbers} title={title} />
      </Folded>
    </section>
  );
}

/** Rule and source, scatter, every rhythm of checks, and how sharp the mean is. */
function Statistics({ numbers, title }: { numbers: TrapNumbers; title: string }) {
  const w = seasonWords.numbers;
  const { rule, planned, rows } = numbers;
  const [nights, choose] = useState(planned.nightsBetweenChecks);
  const rhythms = [...new Set(rows.map((row) => row.nightsBetweenChecks))];
  return (
    <>
      <p>
        {seasonWords.plan.rule(rateText(rule.thresholdPerNight), rule.windowNights)}{' '}
        <small>
          <Cited source={rule.source} standing={rule.standing} />
        </small>
      </p>
      <p>{scatter(numbers)}</p>
      <SelectField
        label={w.rhythm}
        value={String(nights)}
        choices={rhythms.map((each) => [
          String(each),
          `${w.nights(each)}${each === planned.nightsBetweenChecks ? ` (${w.planned})` : ''}`,
        ])}
        choose={(value) => choose(Number(value))}
      />
      <NumbersPicture numbers={numbers} nights={nights} />
      <Table
        label={`${title}: ${w.table}, ${w.nights(nights)}`}
        rows={rows.filter((row) => row.nightsBetweenChecks === nights)}
        keyOf={({ traps }) => traps}
        columns={[
          { head: w.traps, value: ({ traps }) => traps, names: true, number: true },
          { head: w.missedShort, figure: [({ missed }) => missed, percentText] },
          { head: w.falseShort, figure: [({ falseAlarm }) => falseAlarm, percentText] },
          { head: w.precisionShort, figure: [({ precision }) => precision, percentText] },
          { head: w.visits, value: ({ visits }) => visits, number: true },
          { head: w.keeps, value: ({ enough }) => (enough ? w.yes : w.no) },
        ]}
      />
      <p className="key">{w.formula}</p>
    </>
  );
}

function scatter({ dispersion }: TrapNumbers): string {
  const w = seasonWords.numbers;
  const { k, reason, low, high, counts } = dispersion;
  if (reason === 'own-checks') return w.ownK(rateText(k), rateText(low ?? k), rateText(high ?? k), counts);
  return w.assumedK[reason](rateText(k));
}

function listOf({ numbers }: SeasonView) {
  const w = seasonWords.numbers;
  const head = [
    seasonWords.plan.insects,
    seasonWords.plan.design,
    w.rhythm,
    w.traps,
    w.missedShort,
    w.falseShort,
    w.precisionShort,
  ];
  const rows = numbers.flatMap(({ insect, design, rows: all }) =>
    all.map((row) => [insectName(insect), design, row.nightsBetweenChecks, row.traps, row.missed, row.falseAlarm, row.precision]),
  );
  return { head, rows };
}
