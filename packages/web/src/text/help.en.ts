/** Every string of the help in English. */
export const helpEn = {
  title: 'Help',
  sub: 'How to read each page, what the words mean, the keys, and what to beware of. It opens without a connection too.',
  contents: 'On this page',
  reading: 'How to read each page',
  pages: {
    week: {
      title: 'This week',
      text: 'Decisions that are due come first, the late ones before the others, each with the day since when nobody has answered. Beside them stand fields to scout, traps to check and lures to change. In the grid fields go down and insects across: each cell says one verb, the date that goes with it, and the catch a night with its interval. Press a cell for the records and the rule behind it. A field that needs nothing is folded; a dot means that the insect does not feed on the crop.',
    },
    list: {
      title: 'List of fields and traps',
      text: 'Every station with its traps: what hangs there, what the last check said, the catch a night over which nights, what is due, and how old the lure is against its stated life. “Show” brings back traps that were taken down.',
    },
    map: {
      title: 'Map',
      text: 'Each field bears the mark of its most pressing verb. Sizes for catches come only after an insect and a trap design are chosen, since catches of two designs are never put on one scale. Nothing is drawn between the traps: catch is local.',
    },
    field: {
      title: 'A field',
      text: 'The verdict and its reason first, then the season of each insect. Dots and bands are the catch a night with its interval; a gap means that no fit trap hung there, never zero. The dashed line is the rule’s threshold. Below stand checks, lures, heat since the start with the events it dates, crop stage, samples and treatments.',
    },
    trap: {
      title: 'A trap',
      text: 'What the trap is and where it stands, its catches of this season and earlier ones, and every check and lure. A moved trap is a new trap: its catches are not joined to those of the old place.',
    },
    questions: {
      title: 'Questions',
      text: 'Records that look odd: a count that hardly fits the others, two traps that may have been swapped, a trap that stays silent among loud neighbours. Each is a question and not a fault. “It is right” settles it; the record stays as it was written.',
    },
    conflicts: {
      title: 'Conflicts',
      text: 'Two people said different things of one record. The later one is in use and the other is kept; choose which holds. Nothing was lost, and both stay in the history.',
    },
    rounds: {
      title: 'Rounds',
      text: 'Who drives past which stations on which day. Say how many people, from where, and which days; the order is the shortest found. Straight-line distances are stretched to roads by a stated factor unless driving times are given.',
    },
    bulletin: {
      title: 'Bulletin',
      text: 'The week for the growers, drafted from the counts: what flies, where it is heading, what to decide or look at by crop, and what is expected next. No figure is given of fewer than three farms, and no place. Words can be changed; when the draft comes to say something else, it says so. Nothing is sent from here.',
    },
    sheet: {
      title: 'The week on paper',
      text: 'For the wall and the cab. The first sheet is what to decide and to scout, with room to write who decided and what was found. The second is for the drives: a box to tick for each visit of seven days, and the lures for each day. The third is every field with its verbs. Late is said in words, for a grey printer.',
    },
    counts: {
      title: 'Enter counts',
      text: 'Counts written on paper, entered for one day: digits and Tab, or a column pasted from a spreadsheet. Nothing is kept until you save, and then all of it together; Undo takes it back together. A trap whose visit of that day is in the records already is corrected on its own page.',
    },
    scouting: {
      title: 'Scouting',
      text: 'For each field and insect, what to look at, at how many plants, and by when. A sheet for paper can be printed for those ticked.',
    },
    sampling: {
      title: 'A sampling plan',
      text: 'Walk on until the number of infested plants crosses one of the two lines. Below the lower line you may stop: it is below the rule. Above the upper line you may stop: it is above. Between them go on, up to the last row. The curves say how often each answer is right.',
    },
    flights: {
      title: 'Flights',
      text: 'One row for each insect and farm, in the order of what happens next. A filled hill is what was caught, a dashed one what is expected. The share flown has its interval beside it; a wide one means that much is still open.',
    },
    season: {
      title: 'Season plan',
      text: 'When to hang which trap, how many, which lures and what they cost, and next to it what became of the plan. “How many traps” says what would be missed and what would be called in vain with one, two or more traps.',
    },
    review: {
      title: 'Review',
      text: 'A season behind: what was decided and what followed, trap designs side by side at the same places, catch with lures of different age, and catch against infestation. Each comparison says how many pairs it rests on.',
    },
    people: {
      title: 'People',
      text: 'Who has joined and what they may see. A coordinator runs the program, a scout checks traps, a grower sees the own farm, a reader no exact places. People join by a link that holds once.',
    },
    rules: {
      title: 'Rules and insects',
      text: 'Published rules hold for a region; choose the program’s with your adviser. Below stands the source of every fact that advice rests on. “From memory” and “common practice” are to be trusted less than “published”. Below stands every published rule with the fields that rest on it today; a coordinator may switch one off, with a reason that the evidence repeats.',
    },
    weather: {
      title: 'Weather',
      text: 'Each source with its first and newest day, the days that lack an extreme, and the fields it tells of. Heat is summed over measured days; a forecast is never counted as measured. A source may fetch its days by itself, once a coordinator has seen the terms of its service; what it fetched, what failed and when it asks again stand beside it. Where a source is named for gaps, its days are counted wherever heat rests on them.',
    },
    data: {
      title: 'Import and export',
      text: 'Records come in and go out as tables. A file with a fault is refused with every fault named; nothing is kept by halves. Where a sheet was understood otherwise than it is meant, point at its rows. A backup is looked at before it takes the place of the program, which is set aside.',
    },
    settings: {
      title: 'Settings',
      text: 'The program’s name and how you are reached hold for everybody. Language, units, dates and theme are this browser’s own. Records keep °C and metres, whatever is shown.',
    },
    day: {
      title: 'Another day',
      text: 'The day line under the head of each page chooses the day that pages are read on. On another day than today only what was known then counts: advice, catches and forecasts are as they were. A banner says so until you go back.',
    },
  },
  glossary: 'What the words mean',
  /** The verbs bear the names that they have everywhere. */
  verbs: {
    watch: 'Below the rule, nothing due. The date is the next check.',
    scout:
      'Go and look at the plants: eggs or larvae are due, the catch sends people to look, or the stage is not known well enough.',
    decide:
      'A rule is reached. Decide by the date, with a licensed adviser, whether anything is to be done. Duskwatch does not decide.',
    covered: 'A treatment still protects, by its label or by the rule’s interval, whichever ends first.',
    blind:
      'Nothing can be said: a trap is overdue or unfit, a lure is spent, or weather or a rule is missing. It says what would restore sight.',
  },
  terms: {
    late: { word: 'Late', text: 'Due since a day in the past, and nobody has written an answer.' },
    rate: { word: 'Catch a night', text: 'Moths for each trap and night, over nights on which the trap was fit.' },
    interval: { word: 'Interval', text: 'The span that the true rate lies in with the stated chance; most often 80 of 100.' },
    fit: {
      word: 'Fit, unfit',
      text: 'An unfit trap (down, full, flooded, without lure) tells nothing of its nights. They are not zeros.',
    },
    threshold: {
      word: 'Threshold',
      text: 'The catch or infestation at which a rule speaks. It was made for a region, a trap design and a crop stage.',
    },
    station: { word: 'Station', text: 'A place where one or more traps stand.' },
    design: {
      word: 'Trap design',
      text: 'How the trap is built: mesh cone, bucket, sticky. Designs catch differently and are never pooled unadjusted.',
    },
    lure: { word: 'Lure life', text: 'How long a lure draws as its maker states. Past it, catches read low.' },
    biofix: {
      word: 'Biofix',
      text: 'The day that heat is counted from: the first moths of a lasting flight, or a date of the calendar.',
    },
    degreeDay: {
      word: 'Degree-day',
      text: 'One degree above the threshold of development for one day. Insects grow by their sum, not by the calendar.',
    },
    event: {
      word: 'Early, middle, late',
      text: 'An expected date as a span: one year in ten is earlier than the early date, and one in ten later than the late one.',
    },
    flight: { word: 'Flight', text: 'The moths of one generation on the wing, from the first to the last.' },
    sample: { word: 'Scouting sample', text: 'Plants examined and how many were infested, at several places of a field.' },
    stage: { word: 'Crop stage', text: 'How far the crop is, such as whorl, tassel, silk. Rules hold for some stages only.' },
    reentry: { word: 'Re-entry', text: 'Hours after a treatment in which nobody enters the field; from the label.' },
    preharvest: { word: 'Days before harvest', text: 'Days that must lie between a treatment and harvest; from the label.' },
    confidence: { word: 'Confidence', text: 'How far the records bear the verb: high, moderate or low, with what lowers it.' },
    standing: { word: 'Standing of a source', text: 'Published, common practice, or from memory: how far to trust a fact.' },
  },
  keys: 'Keys',
  keyboard: {
    find: { keys: '/', text: 'find a field, trap, farm, insect or page' },
    tab: { keys: 'Tab', text: 'to the next thing that can be pressed' },
    enter: { keys: 'Enter', text: 'opens it' },
    escape: { keys: 'Esc', text: 'closes a sheet, a menu or the search' },
    arrows: { keys: '↑ ↓', text: 'walk a list or a menu' },
    sideways: { keys: '← →', text: 'walk tabs, and the days of a season’s chart' },
    pages: { keys: 'PgUp PgDn', text: 'a week at a time in a season’s chart' },
  },
  cautions: 'Cautions in one place',
  cautionsText:
    'They stand beside each act too. The product’s label, local law and a licensed adviser decide what is done; Duskwatch says when a decision is due, and why.',
  acts: {
    planning: 'Planning',
    siting: 'Choosing a place',
    'setting-posts': 'Setting posts',
    'handling-lures': 'Handling lures',
    checking: 'Checking traps',
    'handling-moths': 'Handling moths',
    'reading-catch': 'Reading a catch',
    'walking-fields': 'Walking fields',
    deciding: 'Deciding',
    treating: 'Treating',
  },
  source: 'Source',
};

export type HelpWords = typeof helpEn;
