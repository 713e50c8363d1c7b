import { Map as GlMap, LngLatBounds, setWorkerUrl } from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import { useEffect, useRef, useState } from 'react';
import type { Place } from '../../shared/places/projection.ts';
import { mapWords as w } from '../../text/map.ts';
import { useBaseMap } from './base-map.ts';
import { Controls } from './Controls.tsx';
import { type GroundProps, roomBeside } from './ground.ts';
import { BaseMapError, groundOf } from './style.ts';

// From an address of ours: the page's content policy allows no worker made of a blob.
setWorkerUrl(workerUrl);

/** Circumference of the Earth at the equator over the pixels of one tile at zoom 0, as MapLibre counts them. */
const METRES_AT_ZOOM_0 = (2 * Math.PI * 6_378_137) / 512;

/** A ground that moves under the marks; with a base map where the reader named one. */
export function GlGround({ places, children, label }: GroundProps) {
  const holder = useRef<HTMLDivElement>(null);
  const map = useRef<GlMap | null>(null);
  const based = useRef(false);
  const [, moved] = useState(0);
  const [fault, setFault] = useState<string | null>(null);
  const [credit, setCredit] = useState('');
  const base = useBaseMap();

  useEffect(() => {
    const made = new GlMap({
      container: holder.current!,
      style: { version: 8, sources: {}, layers: [] },
      attributionControl: false,
      dragRotate: false,
      pitchWithRotate: false,
      touchPitch: false,
      maxZoom: 19,
      fadeDuration: 0,
    });
    made.touchZoomRotate.disableRotation();
    made.keyboard.disableRotation();
    made.getCanvas().setAttribute('aria-label', label);
    const again = () => moved((times) => times + 1);
    made.on('move', again);
    made.on('resize', again);
    made.on('error', ({ error }) => setFault(w.base.failed(error.message)));
    map.current = made;
    return () => {
      map.current = null;
      made.remove();
    };
  }, [label]);

  const shown = places.map(({ latitude, longitude }) => `${latitude},${longitude}`).join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ground is fitted anew only when other places are shown
  useEffect(() => {
    if (map.current) showAll(map.current, places);
  }, [shown]);

  useEffect(() => {
    let gone = false;
    setFault(null);
    setCredit('');
    if (base.kind === 'none' && !based.current) return;
    based.current = true;
    const { lat, lng } = map.current!.getCenter();
    groundOf(base, { latitude: lat, longitude: lng, zoom: map.current!.getZoom() }).then(
      ({ style, attribution }) => {
        if (gone) return;
        map.current?.setStyle(style, { diff: false });
        setCredit(attribution);
      },
      (error: unknown) => {
        if (gone || !(error instanceof BaseMapError)) return;
        map.current?.setStyle({ version: 8, sources: {}, layers: [] }, { diff: false });
        setFault(error.forbidden ? w.base.refused(error.forbidden) : w.base.failed(error.message));
      },
    );
    return () => {
      gone = true;
    };
  }, [base]);

  const now = map.current;
  const size = { width: holder.current?.clientWidth ?? 0, height: holder.current?.clientHeight ?? 0 };
  return (
    <>
      <div className="ground">
        <div ref={holder} className="ground-map" />
        {now &&
          size.width > 0 &&
          children({
            ...size,
            plain: base.kind === 'none',
            metresPerPixel: (METRES_AT_ZOOM_0 * Math.cos((now.getCenter().lat * Math.PI) / 180)) / 2 ** now.getZoom(),
            project: ({ latitude, longitude }) => {
              const { x, y } = now.project([longitude, latitude]);
              return [x, y];
            },
            placeAt: (x, y) => {
              const { lat, lng } = now.unproject([x, y]);
              return { latitude: lat, longitude: lng };
            },
          })}
        {credit && <p className="ground-credit">{credit}</p>}
        <Controls
          nearer={() => now?.zoomIn({ animate: false })}
          farther={() => now?.zoomOut({ animate: false })}
          all={() => now && showAll(now, places)}
        />
      </div>
      {fault && (
        <p className="ground-fault" role="status">
          {fault}
        </p>
      )}
    </>
  );
}

function showAll(map: GlMap, places: readonly Place[]): void {
  const bounds = new LngLatBounds();
  for (const { latitude, longitude } of places) bounds.extend([longitude, latitude]);
  const across = roomBeside(map.getContainer().clientWidth);
  const padding = { left: across, right: across, top: 56, bottom: 48 };
  if (!bounds.isEmpty()) map.fitBounds(bounds, { padding, maxZoom: 15, animate: false });
}
