import type { FieldInsectView, FieldView, InsectFlights, TemperatureUnit } from '@duskwatch/core';
import type { KeyboardEvent, PointerEvent } from 'react';
import { dayText, isoOf } from '../../format/day.ts';
import { flightsWords } from '../../text/flights.ts';
import { words } from '../../text/index.ts';
import { localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { Cited } from '../../ui/Cited.tsx';
import { frame as makeFrame } from '../../ui/chart/frame.ts';
import { useWidth } from '../../ui/chart/useWidth.ts';
import { DecisionStrip, hasDecisions } from './DecisionStrip.tsx';
import { EventList } from './EventList.tsx';
import { ForecastNotes } from './ForecastNotes.tsx';
import { HeatStrip } from './HeatStrip.tsx';
import { LarvaeStrip } from './LarvaeStrip.tsx';
import { RateStrip } from './RateStrip.tsx';
import { readDay } from './reading.ts';
import { SampleStrip } from './SampleStrip.tsx';
import { StageStrip } from './StageStrip.tsx';
import { TimeAxis } from './TimeAxis.tsx';
import { TrapStrip } from './TrapStrip.tsx';

export interface SeasonChartProps {
  readonly view: FieldView;
  readonly insect: FieldInsectView;
  /** Null until they are fitted. */
  readonly flights: InsectFlights | null;
  readonly today: number;
  readonly cursor: number;
  readonly moveTo: (at: number) => void;
  readonly unit: TemperatureUnit;
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -7,
  PageUp: 7,
};

/** One insect's season on the field's time axis: a slider over its days, read out as text. */
export function SeasonChart(props: SeasonChartProps) {
  const { view, insect, flights, today, cursor, moveTo, unit } = props;
  const wording = useWording();
  const [ref, width] = useWidth<HTMLDivElement>();
  const frame = makeFrame(view.from, view.to, width);
  const strip = { frame, today, cursor };
  const summed = insect.heat.filter((heat) => heat.days.length > 0);
  const reading = readDay(view, insect, isoOf(cursor), unit, wording, flights);
  const forecastOf = (modelId: string) => flights?.forecasts.find((each) => each.modelId === modelId) ?? null;
  const move = (event: PointerEvent<HTMLDivElement>) =>
    moveTo(frame.dayAt(event.clientX - event.currentTarget.getBoundingClientRect().left));
  const press = (event: KeyboardEvent) => {
    const step = STEPS[event.key];
    const target = event.key === 'Home' ? frame.from : event.key === 'End' ? frame.to : step && cursor + step;
    if (target === undefined) return;
    event.preventDefault();
    moveTo(Math.min(frame.to, Math.max(frame.from, target)));
  };
  return (
    <div className="season">
      <p className="reading">
        <b>{reading.day}</b> {reading.parts.join(' · ')}
      </p>
      <div
        ref={ref}
        className="strips"
        role="slider"
        tabIndex={0}
        aria-label={words.field.chartLabel(localName(insect.insect.commonName))}
        aria-description={words.field.chartHelp}
        aria-valuemin={frame.from}
        aria-valuemax={frame.to}
        aria-valuenow={cursor}
        aria-valuetext={`${reading.day}: ${reading.parts.join(', ')}`}
        onPointerMove={move}
        onPointerDown={move}
        onKeyDown={press}
      >
        <TimeAxis {...strip} at="top" />
        {view.stages.length > 0 && <StageStrip view={view} {...strip} />}
        {hasDecisions(insect) && <DecisionStrip view={view} insect={insect} {...strip} />}
        {designsOf(insect).map(({ design, line, traps }) => (
          <div key={design}>
            {line && <RateStrip insect={insect} line={line} flights={flights?.flights ?? null} {...strip} />}
            {traps.map((trap) => (
              <TrapStrip key={trap.trapId} insect={insect} trap={trap} {...strip} />
            ))}
          </div>
        ))}
        {flights?.larvae && (
          <>
            <p className="strip-title">{flightsWords.larvae.title}</p>
            <LarvaeStrip larvae={flights.larvae} {...strip} />
          </>
        )}
        {insect.samples.length > 0 && <SampleStrip insect={insect} {...strip} />}
        {summed.map((heat) => (
          <div key={heat.modelId}>
            <p className="strip-title">
              {words.field.heatAxis(`°${unit}·d`)} · {localName(heat.modelName)},{' '}
              {words.field.starts(dayText(heat.startsOn), heat.startKind)}
            </p>
            <HeatStrip heat={heat} unit={unit} {...strip} />
          </div>
        ))}
        <TimeAxis {...strip} />
      </div>
      {summed.map((heat) => (
        <div key={heat.modelId} className="model">
          <p>
            {localName(heat.modelName)}. {words.field.events.source}: <Cited source={heat.source} standing={heat.standing} />.
          </p>
          <EventList heat={heat} unit={unit} forecast={forecastOf(heat.modelId)} />
          {forecastOf(heat.modelId) && <ForecastNotes forecast={forecastOf(heat.modelId)!} />}
        </div>
      ))}
    </div>
  );
}

/** The designs that hang or hung here, each with its line and its traps: none is drawn on another's scale. */
function designsOf({ lines, traps }: FieldInsectView) {
  const designs = [...new Set([...lines.map(({ design }) => design), ...traps.map(({ design }) => design)])];
  return designs.map((design) => ({
    design,
    line: lines.find((each) => each.design === design) ?? null,
    traps: traps.filter((trap) => trap.design === design),
  }));
}
