import { oneOf, type RawSearch, textIn } from '../../browser/address.ts';
import { RECORDED, type Recorded } from '../../shared/record/kinds.ts';

export interface RecordSearch {
  readonly field?: string | undefined;
  /** The form that stands open. */
  readonly what?: Recorded | undefined;
}

export const recordSearch = (raw: RawSearch): RecordSearch => ({ field: textIn(raw.field), what: oneOf(raw.what, RECORDED) });
