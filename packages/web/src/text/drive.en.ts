/** Before the drive and on the way, in English: what to take, why a stop is due, where it lies. */

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const driveEn = {
  take: {
    title: 'Take along',
    lures: (list: string) => `Lures: ${list}`,
    lure: (n: number, insect: string) => `${n} ${insect}`,
    gloves: (n: number) => plural(n, 'pair of gloves', 'pairs of gloves'),
    glovesHelp: 'a fresh pair for each lure',
    stops: (list: string, n: number) => `${n === 1 ? 'for stop' : 'for stops'} ${list}`,
    repair: 'Post, ties and a spare trap',
    repairHelp: (list: string, n: number) => `${n === 1 ? 'stop' : 'stops'} ${list} found unfit`,
    cold: 'A cool box for live moths',
  },

  due: {
    today: 'check due today',
    late: (days: number) => `check ${plural(days, 'day', 'days')} late`,
    never: 'first check',
    notDue: (date: string) => `not due until ${date}`,
    lureLast: 'lure on its last day',
    lurePast: (days: number) => `lure ${plural(days, 'day', 'days')} past its life`,
    lureSoon: (days: number) => `lure ends in ${plural(days, 'day', 'days')}`,
    unfit: (reason: string) => `was ${reason}: put it right`,
    unfitUnsaid: 'was unfit: put it right',
    silent: (nights: number, count: string, others: string) =>
      `${count} in ${plural(nights, 'night', 'nights')}, others about ${others}: look at lure, opening and place`,
    loud: (nights: number, count: string, others: string) =>
      `${count} in ${plural(nights, 'night', 'nights')}, others about ${others}: look whether all are the target`,
  },

  way: {
    winds: ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'],
    from: (distance: string, wind: string, from: string) => `${distance} ${wind} of ${from}`,
    fromYou: (distance: string, wind: string) => `${distance} ${wind} of you`,
    here: 'From here',
    finding: 'Finding you …',
    failed: 'This phone does not say where it is.',
    map: 'Map',
    mapLabel: (station: string) => `${station} in this phone’s map`,
    caution: 'Never look while driving.',
    noPlace: 'No place is recorded for this station.',
  },

  clock: {
    ahead: (days: number) => `This phone’s clock is ${plural(days, 'day', 'days')} ahead.`,
    behind: (days: number) => `This phone’s clock is ${plural(days, 'day', 'days')} behind.`,
    written: (date: string) => `What you save is written for ${date}.`,
    redate: (date: string) => `Write it for ${date}`,
  },

  signal: {
    none: 'No signal',
    signedOut: 'Signed out',
    signedOutText: 'You are signed out, so nothing is read or sent. What you save is kept here until you sign in.',
  },

  typed: {
    row: (count: string) => `${count} typed, not saved`,
    something: 'begun, not saved',
    title: (n: number) => `${plural(n, 'visit is', 'visits are')} typed and not saved`,
    of: (what: string, date: string) => `${what}, ${date}`,
    save: (n: number) => (n === 1 ? 'Save it and end' : `Save all ${n} and end`),
    cannot: 'Some still lack something: open them, or end without them.',
    without: 'End without them',
    withoutHelp: 'They stay typed on this phone, and stand in their boxes when the trap is opened on the same day.',
    open: 'Open',
  },
};

export type DriveWords = typeof driveEn;
