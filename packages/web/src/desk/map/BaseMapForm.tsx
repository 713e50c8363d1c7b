import { type FormEvent, useState } from 'react';
import { mapWords } from '../../text/map.ts';
import { Field } from '../../ui/Field.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { addressKind, chooseBaseMap, useBaseMap } from './base-map.ts';

/** Where the reader names a base map, if they want one. */
export function BaseMapForm() {
  const w = mapWords.base;
  const base = useBaseMap();
  const [address, writeAddress] = useState(base.kind === 'address' ? base.address : '');
  const [attribution, writeAttribution] = useState(base.kind === 'address' ? base.attribution : '');
  const [faulty, setFaulty] = useState(false);
  const use = (event: FormEvent) => {
    event.preventDefault();
    const written = address.trim();
    const known = addressKind(written) !== null;
    setFaulty(!known);
    if (known) chooseBaseMap({ kind: 'address', address: written, attribution: attribution.trim() });
  };
  return (
    <Folded title={w.title} className="base-map">
      <p>{w.lead}</p>
      <div className="base-ways">
        <Field label={w.file} hint={w.fileHint}>
          {(box) => (
            <input
              type="file"
              accept=".pmtiles"
              {...box}
              onChange={(event) => {
                const file = event.currentTarget.files?.[0];
                if (file) chooseBaseMap({ kind: 'file', file });
              }}
            />
          )}
        </Field>
        <form noValidate onSubmit={use}>
          <Field label={w.address} hint={w.addressHint} faults={faulty ? [w.faulty] : []}>
            {(box) => <input type="url" value={address} {...box} onChange={(event) => writeAddress(event.currentTarget.value)} />}
          </Field>
          <Field label={w.attribution} hint={w.attributionHint}>
            {(box) => (
              <input type="text" value={attribution} {...box} onChange={(event) => writeAttribution(event.currentTarget.value)} />
            )}
          </Field>
          <p className="actions">
            <button type="submit" className="button">
              {w.use}
            </button>
            {base.kind !== 'none' && (
              <button type="button" className="plain-button" onClick={() => chooseBaseMap({ kind: 'none' })}>
                {w.none}
              </button>
            )}
          </p>
        </form>
      </div>
    </Folded>
  );
}
