import type { Plugin } from 'vite';

/**
 * Letters of our own only where they are here at once, as after a first visit: those that come later would be wider or
 * narrower than what stands, and move the page under whoever reads it.
 */
export const fontDisplay = (): Plugin => ({
  name: 'font-display',
  enforce: 'pre',
  transform: {
    filter: { id: /@fontsource-variable\/.+\.css/ },
    handler: (code) => code.replaceAll('font-display: swap', 'font-display: optional'),
  },
});
