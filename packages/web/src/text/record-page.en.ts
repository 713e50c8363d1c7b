/** Every string of what a grower writes down on a phone in English. */
export const recordPageEn = {
  title: 'Record',
  field: 'In which field?',
  reading: 'Reading your fields …',
  kinds: {
    stages: { name: 'A stage of the crop', means: 'Silk, fruiting, harvest: advice follows it.' },
    samples: { name: 'What you looked at', means: 'So many plants, so many with the insect.' },
    treatments: { name: 'A treatment', means: 'With the days and hours of its label.' },
    decisions: { name: 'Decided not to act, because …', means: 'So that nobody asks again tomorrow.' },
  },
  kept: 'Without signal it is kept on this phone and sent by itself.',
  none: 'There is no field of yours yet. A coordinator writes down farms and fields.',
};

export type RecordPageWords = typeof recordPageEn;
