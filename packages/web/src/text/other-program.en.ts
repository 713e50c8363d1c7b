/** Every string about the way from one's own program to the demo and back, in English. */
export const otherProgramEn = {
  go: { own: 'Start my own program', demo: 'Try the demo' },
  /** Where one's own may long be under way. */
  to: { own: 'My own program', demo: 'The invented demo' },
  text: {
    own: 'An invented program to look around in: nothing written here reaches a program of your own.',
    demo: 'An invented co-operative with two full seasons and one stopped in mid-July. It lies in a database of its own and never mixes with your records.',
  },
  opening: { own: 'Opening your program …', demo: 'Opening the demo; the first time takes some seconds …' },
  failed: 'It could not be opened. The terminal in which Duskwatch runs says why.',
};

export type OtherProgramWords = typeof otherProgramEn;
