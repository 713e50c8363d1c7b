/** What the address of scouting says, so that a reload and the phone's back button keep the place. */
export interface ScoutSearch {
  readonly field?: string | undefined;
  readonly insect?: string | undefined;
}

const text = (value: unknown) => (typeof value === 'string' && value !== '' ? value : undefined);

export const scoutSearch = (raw: Readonly<Record<string, unknown>>): ScoutSearch => ({
  field: text(raw.field),
  insect: text(raw.insect),
});
