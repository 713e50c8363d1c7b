import { words } from '../../text/index.ts';
import { walkWords as w } from '../../text/walk.ts';

const percentFormat = new Intl.NumberFormat(words.locale, { style: 'percent', maximumFractionDigits: 0 });
const percentOf = (share: number) => (Number.isNaN(share) ? '–' : percentFormat.format(share));

export const shareText = ({ share, low, high }: { share: number; low: number; high: number }) =>
  w.walk.share(percentOf(share), percentOf(low), percentOf(high));
