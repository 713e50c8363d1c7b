import { useId, useState } from 'react';
import { mapWords } from '../../text/map.ts';
import { addressKind, chooseBaseMap, useBaseMap } from './base-map.ts';

/** Where the reader names a base map, if they want one. */
export function BaseMapForm() {
  const w = mapWords.base;
  const base = useBaseMap();
  const [address, writeAddress] = useState(base.kind === 'address' ? base.address : '');
  const [attribution, writeAttribution] = useState(base.kind === 'address' ? base.attribution : '');
  const [faulty, setFaulty] = useState(false);
  const id = useId();
  return (
    <details className="base-map">
      <summary>{w.title}</summary>
      <p>{w.lead}</p>
      <div className="base-ways">
        <label>
          <span>{w.file}</span>
          <input
            type="file"
            accept=".pmtiles"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              if (file) chooseBaseMap({ kind: 'file', file });
            }}
          />
          <small>{w.fileHint}</small>
        </label>
        <form
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            const written = address.trim();
            setFaulty(addressKind(written) === null);
            if (addressKind(written) !== null)
              chooseBaseMap({ kind: 'address', address: written, attribution: attribution.trim() });
          }}
        >
          <label>
            <span>{w.address}</span>
            <input
              type="url"
              value={address}
              aria-invalid={faulty || undefined}
              aria-describedby={faulty ? `${id}-fault` : undefined}
              onChange={(event) => writeAddress(event.currentTarget.value)}
            />
            <small>{w.addressHint}</small>
          </label>
          {faulty && (
            <p className="faults" id={`${id}-fault`}>
              {w.faulty}
            </p>
          )}
          <label>
            <span>{w.attribution}</span>
            <input type="text" value={attribution} onChange={(event) => writeAttribution(event.currentTarget.value)} />
            <small>{w.attributionHint}</small>
          </label>
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
    </details>
  );
}
