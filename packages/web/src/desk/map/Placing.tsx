import type { FieldRecord } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { recordsQuery } from '../../shared/record/queries.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { mapWords } from '../../text/map.ts';
import type { GroundNow } from './ground.ts';

const w = mapWords.placing;

/** Degrees to about a metre: nobody points more closely. */
const DECIMALS = 5;
const metre = (degrees: number): number => Number(degrees.toFixed(DECIMALS));

/** Where nothing has a place yet, the ground to look for the first on: the lands that people grow on. */
export const WORLD = [
  { latitude: -45, longitude: -125 },
  { latitude: 60, longitude: 150 },
] as const;

/** The cross over the middle of the ground, and the button that takes what lies under it: by pointer and by keys alike. */
export function PlacingCross({ now, field, done }: { now: GroundNow; field: FieldRecord; done: () => void }) {
  const { data: fields = [] } = useQuery(recordsQuery('fields'));
  const write = useWriteRecords();
  const take = async () => {
    const held = fields.find(({ value }) => value.fieldId === field.fieldId);
    if (!held) return;
    const { latitude, longitude } = now.placeAt(now.width / 2, now.height / 2);
    const value = { ...held.value, latitude: metre(latitude), longitude: metre(longitude) };
    const { recordId, revisionId } = held;
    if (await write(w.saved(field.name), { kind: 'fields', value, base: { recordId, revisionId }, before: held.value })) done();
  };
  return (
    <div className="placing">
      <svg viewBox="0 0 40 40" aria-hidden="true">
        <path d="M20 2v13m0 10v13M2 20h13m10 0h13" />
      </svg>
      <p className="placing-bar">
        <span>{w.how(field.name)}</span>
        <button type="button" className="button primary" onClick={() => void take()}>
          {w.here}
        </button>
        <button type="button" className="plain-button" onClick={done}>
          {w.cancel}
        </button>
      </p>
    </div>
  );
}

/** The fields that have no place yet, for whoever may give them one. */
export function UnplacedFields({ fields, place }: { fields: Iterable<FieldRecord>; place: (field: FieldRecord) => void }) {
  const mayWrite = useMayWrite()('fields');
  const unplaced = [...fields].filter(({ latitude, longitude }) => latitude === null || longitude === null);
  if (!mayWrite || unplaced.length === 0) return null;
  return (
    <section className="unplaced-fields">
      <h2 className="unplaced-head">{w.fields}</h2>
      <p className="key">{w.text}</p>
      <ul>
        {unplaced.map((field) => (
          <li key={field.fieldId}>
            <span>
              {field.name} <small>{field.farm}</small>
            </span>
            <button type="button" className="button" aria-label={w.putNamed(field.name)} onClick={() => place(field)}>
              {w.put}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
