/** Every string of the page that leads to all else on a phone in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const moreEn = {
  title: 'More',
  pages: 'Further pages',
  scout: 'Scouting walk',
  unsent: {
    title: 'Not sent yet',
    none: 'All that you wrote on this phone has arrived.',
    waits: (n: number) => `${plural(n, 'record waits', 'records wait')} on this phone and will be sent by themselves.`,
    refused: (n: number) => `${plural(n, 'record was', 'records were')} refused: see why, and mend or discard.`,
    seeRefused: 'See what was refused',
    send: 'Send now',
    sending: 'Sending …',
    trouble: {
      unreachable: 'No signal.',
      'signed-out': 'You are signed out: sign in, and they go on their way.',
      'other-person': 'Somebody else is signed in here: they wait for whoever wrote them.',
    },
  },
};

export type MoreWords = typeof moreEn;
