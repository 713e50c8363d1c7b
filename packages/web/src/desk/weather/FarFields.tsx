import type { WeatherSourcesView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useLengthUnit } from '../../browser/preferences.ts';
import { distanceText } from '../../format/length.ts';
import { recordsQuery } from '../../shared/record/queries.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { weatherWords } from '../../text/weather.ts';

const w = weatherWords.question;

/** Fields whose only source of weather is far away: a question, and the answer is written into the field. */
export function FarFields({ far }: { far: WeatherSourcesView['far'] }) {
  const [unit] = useLengthUnit();
  const mayWrite = useMayWrite()('fields');
  const { data: fields = [] } = useQuery({ ...recordsQuery('fields'), enabled: far.length > 0 });
  const write = useWriteRecords();
  if (far.length === 0) return null;
  const take = (fieldId: string, sourceId: string) => {
    const held = fields.find(({ value }) => value.fieldId === fieldId);
    if (!held) return;
    const { recordId, revisionId, value } = held;
    const named = { ...value, weatherSource: sourceId };
    void write(w.taken, { kind: 'fields', value: named, base: { recordId, revisionId }, before: value });
  };
  return (
    <section className="notice weather-far">
      <h2>{w.title}</h2>
      <p>{w.text}</p>
      <ul>
        {far.map(({ fieldId, name, farm, sourceId, km }) => (
          <li key={fieldId}>
            {w.line(name, farm, sourceId, distanceText(km, unit))}{' '}
            {mayWrite && (
              <button type="button" className="button" onClick={() => take(fieldId, sourceId)}>
                {w.take(sourceId, name)}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
