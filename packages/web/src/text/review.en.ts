/** Every string of the season's review in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const reviewEn = {
  title: 'Review',
  sub: 'What the season’s own records teach, and what they cannot tell yet.',
  working:
    'Working it out from every check of the program. The first time takes a while; until something new is written, never again.',
  parts: {
    label: 'Lessons',
    review: 'Season review',
    years: 'Years',
    designs: 'Designs side by side',
    lures: 'Lure age',
    infestation: 'Catch and crop',
  },
  empty: {
    title: 'Nothing to learn from yet',
    text: 'Lessons come from checks. Record a few rounds, and the season’s review begins here.',
  },
  notYet: 'Not known yet',
  have: (have: number, need: number) => `There are ${have}; it takes ${need}.`,
  level: (level: string) => `Intervals hold the truth in ${level} of such cases.`,
  behind: 'The figures as a table',

  designs: {
    lead: 'Two designs, or lures, that stood at one place in exactly the same nights. What a night does to both alike cancels, and the ratio of their catches is left.',
    none: 'No two designs or lures stood side by side. Hang another design beside a trap for a few weeks, and check both on the same days.',
    compared: { design: 'designs', 'lure-life': 'lures by their stated life' },
    ratio: (treatment: string, against: string) => `${treatment} against ${against}`,
    axis: 'times the catch',
    equal: 'equal',
    text: (treatment: string, against: string, ratio: string, low: string, high: string) =>
      `${treatment} catches ${ratio} times what ${against} does (${low} to ${high}).`,
    maybe: 'The interval takes in 1: they may catch alike.',
    rests: (shared: number, sites: number) =>
      `Rests on ${plural(shared, 'shared stretch of nights', 'shared stretches of nights')} at ${plural(sites, 'site', 'sites')}.`,
    scatter: {
      seen: 'How far the sites differ from one another is in the interval.',
      assumed:
        'Two traps alike still differ by post, setting and lure. With so few sites nobody sees by how much: a quarter is assumed.',
    },
    more: (n: number) => `${plural(n, 'site', 'sites')} with both would bring both ends within half as much again of the ratio.`,
    published: (low: string, high: string, source: string) => `Published: ${low} to ${high} times (${source}).`,
    trend: (from: string, first: string, to: string, last: string, perYear: string, low: string, high: string) =>
      `It has changed with the years: ${first} times in ${from}, ${last} times in ${to}; by a factor of ${perYear} a year (${low} to ${high}). One ratio for all years misleads.`,
    noTrend: (seasons: number, low: string, high: string) =>
      `No change with the years shows in ${seasons} seasons (a factor of ${low} to ${high} a year).`,
    seasons: 'Season by season',
    reasons: {
      'one-treatment': 'Only one kind was counted in these nights.',
      'too-few-shared-nights': 'Too few stretches of nights with both, and some catch. Keep them side by side for longer.',
      'too-few-moths': 'Too few moths in one of them. Go on at the height of a flight.',
    },
    lure: (days: string) => `lure of ${days} days`,
    leftOut: 'Left out, trap-nights',
    why: {
      'no-information': 'nothing could be counted',
      doubtful: 'doubtful visits',
      'lure-spent': 'lure past its life',
      'lure-not-stated': 'no lure life written',
      'other-nights': 'no other kind in the same nights',
      older: 'older than what is fitted at once',
    },
    columns: {
      pair: 'Compared',
      ratio: 'Ratio',
      low: 'from',
      high: 'to',
      shared: 'Shared stretches',
      sites: 'Sites',
      differ: 'Sites differ by (log s.d.)',
      needed: 'Sites that would do',
      season: 'Season',
    },
  },

  lures: {
    lead: 'How catch falls as a lure ages, from lures of different ages in the same nights under the same flight. It shows only where lures are changed on different days.',
    axis: 'catch against a fresh lure',
    days: 'days since the change',
    change: (percent: string, low: string, high: string) => `A week of age changes the catch by ${percent} (${low} to ${high}).`,
    halfLife: (days: string, low: string) => `Half is left after about ${days} days; it may be ${low}, or never.`,
    halfLifeBounded: (days: string, low: string, high: string) => `Half is left after about ${days} days (${low} to ${high}).`,
    weakens: 'Catch falls with age.',
    unclear: 'A fall does not show: the interval takes in no change at all.',
    rises: 'Catch seems to rise with age. That is more likely the season than the lure: look at it with doubt.',
    used: (visits: number, oldest: string) => `${plural(visits, 'visit', 'visits')}; the oldest lure was ${oldest} days old.`,
    reasons: {
      'changed-together':
        'Not identifiable: on each night all lures were of one age, so age and night cannot be told apart. Change the lures of half the traps in one week and of the others in the next.',
      'never-changed':
        'Not identifiable: each trap kept its lure, so age goes with trap and night. Change lures within the season, in different weeks for different traps.',
      'too-few-observations':
        'Too few catches for the effects of trap, night and age. More traps in the same nights tell more than more nights.',
      'no-fit':
        'No finite estimate: some trap or night caught nothing where others did. More checks in the flight would settle it.',
    },
    columns: { age: 'Age, days', share: 'Share left', low: 'from', high: 'to' },
  },

  crop: {
    lead: 'Samples of the crop against the catch some days before. From which catch on is the rule’s infestation to be expected here?',
    none: 'No samples in fields with traps yet. Sample a field when its traps catch little, too: both sides are needed.',
    name: (kind: string, crop: string, design: string) => `${kind} of ${crop}, ${design}`,
    pairs: (n: number) => plural(n, 'sample with the catch before it', 'samples with the catch before them'),
    lag: (days: string, low: string, high: string) => `Catch speaks for the crop about ${days} days later (${low} to ${high}).`,
    lagHeat: (heat: string, low: string, high: string, model: string) =>
      `Catch speaks for the crop about ${heat} of heat later (${low} to ${high}), as ${model} counts it.`,
    heatAsDays: (days: string) => `In these samples that was about ${days} days.`,
    lagOpen: 'The lag may lie outside those tried.',
    daysBefore: (days: string) => `${days} days before`,
    heatBefore: (heat: string) => `${heat} of heat before`,
    scatter:
      'Fields differ more than chance alone would have it; the intervals rest on how they differ, however often each was sampled.',
    axis: 'moths per trap per night, at that lag',
    share: 'share found',
    perUnit: 'found per unit',
    rule: (share: string) => `the rule: ${share}`,
    suggested: (rate: string) => `suggested: ${rate}`,
    inForce: (rate: string) => `now: ${rate}`,
    thresholds: 'Thresholds by these samples',
    columns: {
      threshold: 'Threshold, a night',
      missed: 'Missed',
      needless: 'Called needlessly',
      source: 'Where it is from',
    },
    suggestion: 'Suggested from these samples',
    leftOutOfFit: 'each sample judged without itself',
    now: 'In force now',
    noRule: 'No rule reads this catch now.',
    rate: (wrong: number, of: number, share: string, low: string, high: string) =>
      `${wrong} of ${of}: ${share} (${low} to ${high})`,
    noRate: 'no such sample',
    missedMeans:
      'Missed: samples at the rule or above, of which the catch said nothing. Called needlessly: samples below it that the catch called.',
    never: 'A suggestion is never used by itself.',
    accept: 'Use it as our own rule …',
    decline: 'Not for us',
    declined: (who: string, day: string) => `${who} declined this on ${day}.`,
    again: 'Look at it again',
    accepted: (who: string, day: string) => `${who} made this a rule on ${day}.`,
    seeRule: 'This week reads the catch by it from that day on.',
    confirm: {
      title: 'A rule of our own',
      text: (insect: string, crop: string, design: string, rate: string) =>
        `From today, a decision is due for ${insect} in ${crop} when a ${design} catches ${rate} or more a night.`,
      replaces: (source: string) => `It goes before: ${source}. That rule stays in the evidence as another that would fit.`,
      caution:
        'A decision is not a treatment. What to do stays with you, your licensed adviser, the product label and local law.',
      source: 'Written as its source',
      yes: 'Yes, make it our rule',
      no: 'No, leave things as they are',
    },
    said: 'The rule is in force.',
    saidDeclined: 'Declined, and remembered.',
    saidAgain: 'It is a suggestion again.',
    source: (p: {
      kind: string;
      samples: number;
      from: string;
      to: string;
      design: string;
      lag: string;
      missed: string;
      needless: string;
      who: string;
      day: string;
    }) =>
      `Our own: ${p.samples} samples of ${p.kind}, ${p.from} to ${p.to}, against ${p.design} catches ${p.lag}. Missed ${p.missed}, called needlessly ${p.needless}. Accepted by ${p.who} on ${p.day}.`,
    reasons: {
      'too-few-pairs': 'Too few samples with the catch known at each lag before them that is tried.',
      'too-few-fields': 'Too few fields sampled. Samples of one field are alike; how fields differ shows only in others.',
      'one-sided': 'Nearly all samples lie on one side of the rule. Sample after low and after high catches alike.',
      'no-relation': 'Catch does not foretell infestation in these samples: scout by stage and heat instead.',
      'outside-catches': 'The threshold would lie outside the catches seen: that would be a guess.',
      'no-fit': 'No fit at any lag: the catches hardly differ.',
      'no-rule-level': 'No rule says from which share of these somebody acts, so there is nothing to be warned of.',
    },
    sampleColumns: { field: 'Field', farm: 'Farm', day: 'Sampled', found: 'Found', of: 'of', catch: 'Catch at the lag' },
    leftOut: (notCounted: number, treated: number, noCatch: number) =>
      `Left out: ${notCounted} without a figure, ${treated} after a treatment, ${noCatch} without a fit trap before.`,
  },

  review: {
    lead: (year: string) => `Season ${year}`,
    open: (through: string) => `still open, known through ${through}`,
    over: 'over',
    farm: 'Farm',
    allFarms: 'The whole program',
    print: 'Print',
    private: 'Each farm’s review holds nothing of another farm.',
    timing: 'Flights',
    timingColumns: {
      insect: 'Insect, design',
      traps: 'Traps',
      moths: 'Moths',
      rate: 'A night',
      interval: 'Interval',
      first: 'First',
      tenth: '10 %',
      half: 'Half',
      nine: '90 %',
      unseen: 'Nights unseen',
    },
    calls: 'What was asked, and how it was answered',
    callsLead: (read: number, checked: number, within: number) =>
      `As known on ${read} of ${checked} days with checks. An answer is what was written up to ${within} days after it was last asked: to a decision a treatment or a reason not to treat, to scouting a sample or a reason not to look. Late: days past the day it was due.`,
    tally: {
      scout: (n: number, sampled: number) => `Scout ${n} times, sampled ${sampled}`,
      decide: (n: number, sampled: number, treated: number) => `Decide ${n} times, sampled ${sampled}, treated ${treated}`,
      blind: (n: number) => `Blind ${n} times`,
      infested: (n: number) => `${n} of these samples found something`,
    },
    answers: (inTime: number, late: number, middle: number | null, unanswered: number) =>
      `${inTime} answered in time, ${late} late${middle === null ? '' : ` (by ${plural(middle, 'day', 'days')} in the middle)`}, ${unanswered} not answered at all.`,
    outcomes: {
      unanswered: { head: 'Never answered', act: 'Answer what is open this week' },
      late: { head: 'Answered late', act: 'Plan rounds closer together' },
      'in-time': { head: 'Answered in time' },
    },
    callColumns: {
      field: 'Field',
      insect: 'Insect',
      verb: 'Asked',
      days: 'Asked on',
      due: 'Due',
      answer: 'Answer',
      late: 'Days late',
    },
    answeredBy: {
      sample: (day: string, said: string) => `sampled ${day}: ${said}`,
      treatment: (day: string, product: string) => `treated ${day}: ${product}`,
      decision: (day: string, why: string) => `decided not to, ${day}: ${why}`,
    },
    openFor: (days: number) => `${plural(days, 'day', 'days')} and no answer`,
    nothing: 'nothing recorded',
    sample: (infested: string, examined: number) => `${infested} of ${examined}`,
    uncounted: 'not counted',
    noCalls: 'Nobody was asked to scout or decide.',
    uncalled: (n: number) => `${plural(n, 'treatment', 'treatments')} that no verb had called for`,
    missed: 'Checks and lures missed',
    noneMissed: 'No trap was left too long, and no lure hung past its life.',
    faults: {
      'left-long': { head: 'Traps left too long between checks', act: 'To the rounds' },
      'lure-late': { head: 'Lures changed after their life', act: 'To the lures of the season' },
      'lure-unknown': { head: 'Lures that nobody wrote down', act: 'To the traps' },
      unfit: { head: 'Visits that found the trap unfit', act: 'To the traps' },
    },
    faultColumns: { what: 'Trap or reason', days: 'Days', from: 'From', to: 'To', note: 'Note' },
    stillWaiting: 'now',
    nightsUnseen: (nights: number) => `${plural(nights, 'night', 'nights')} without a visit`,
    pastLife: (days: number) => `${plural(days, 'day', 'days')} past its life`,
    noLure: 'no lure recorded',
    noLife: (n: number) => `${plural(n, 'lure', 'lures')} without a written life`,
    noLifeNote: 'late or not, nobody can tell',
    unfitVisits: (visits: number, traps: number) => `${plural(visits, 'visit', 'visits')} to ${plural(traps, 'trap', 'traps')}`,
    unfitUnsaid: 'nobody said why',
    cost: 'Cost of a decision',
    costLead: 'Prices stay in this browser.',
    currency: 'Currency',
    prices: { trap: 'A trap, this season’s share', lure: 'A lure', visit: 'A visit to one trap', sample: 'A sample' },
    work: (p: { traps: number; lures: number; visits: number; samples: number; decisions: number }) =>
      `${plural(p.traps, 'trap', 'traps')}, ${plural(p.lures, 'lure', 'lures')}, ${plural(p.visits, 'visit', 'visits')}, ${plural(p.samples, 'sample', 'samples')}; ${plural(p.decisions, 'decision', 'decisions')}`,
    costMissing: (what: string) => `Unknown while there is no price for: ${what}.`,
    costTotal: (total: string, each: string) => `${total} in all, ${each} for each decision.`,
    costNone: (total: string) => `${total} in all; no decision was due.`,
  },

  years: {
    lead: 'The same insect in each year. On the calendar it shows whether a year was early; on the heat axis, whether it was early for its heat.',
    insect: 'Insect',
    farm: 'Farm',
    allFarms: 'All farms',
    axis: 'Axis',
    calendar: 'Calendar',
    heat: 'Heat',
    heatAxis: (unit: string, model: string) => `degree-days (${unit}) since the growing year began, ${model}`,
    noHeat: {
      'no-model': 'No heat axis: the catalogue holds no heat model for this insect.',
      'no-weather-source': 'No heat axis: no weather source informs these fields.',
      'several-weather-sources': 'No heat axis for all farms together: several weather sources inform them. Choose one farm.',
    },
    heatShort: (unit: string) => `degree-days, °${unit}`,
    noHeatDays: 'no weather for these days',
    scale: 'moths per trap per night',
    traps: (n: number, stations: number) => `${plural(n, 'trap', 'traps')} at ${plural(stations, 'station', 'stations')}`,
    half: (at: string) => `half by ${at}`,
    soFar: 'so far',
    none: 'Nothing of this insect was counted in any year.',
    gaps: 'One scale for all years of a design. Gaps are nights without a fit trap, never zeros.',
    columns: {
      year: 'Year',
      design: 'Design',
      from: 'From',
      to: 'To',
      rate: 'A night',
      interval: 'Interval',
      heat: 'Heat at the end',
      share: 'Share so far',
    },
  },
};

export type ReviewWords = typeof reviewEn;
