/** The build that starts its worker from an address, so that the page's content policy allows no blob. */
declare module 'maplibre-gl/dist/maplibre-gl-csp.js' {
  import type * as maplibre from 'maplibre-gl';

  const all: typeof maplibre;
  export default all;
}
