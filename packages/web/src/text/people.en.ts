/** Every string of signing in, joining and people in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const peopleEn = {
  roles: {
    coordinator: { name: 'coordinator', means: 'Runs the program: sees and changes everything, and invites people.' },
    scout: { name: 'scout', means: 'Checks traps and records what is found; sees the whole program but its prices.' },
    grower: { name: 'grower', means: 'Sees the fields of own farms, and records what is done there.' },
    reader: { name: 'reader', means: 'Sees how the season goes; no field, farm or place.' },
  },

  entry: {
    name: 'Name',
    nameHint: 'As others here know you. You sign in with it.',
    password: 'Password',
    newPassword: 'Password of your choice',
    passwordHint: (least: number) =>
      `At least ${least} characters, of any kind, spaces too. Some words that do not belong together are easy to keep in mind; a password manager is welcome.`,
    show: 'Show',
    hide: 'Hide',
    showLabel: 'Show the password',
    hideLabel: 'Hide the password',
    language: 'Language',
    working: 'One moment …',
  },

  faults: {
    name: {
      missing: 'Write a name.',
      'too-long': 'That name is too long: at most 80 characters.',
      'invisible-characters': 'That name holds characters that cannot be seen. Type it anew.',
      'mixed-alphabets': 'A word of that name mixes letters of two alphabets that look alike. Type it anew.',
      taken: 'Somebody here has that name. Add a second name; if that is you, ask a coordinator for a link for a new password.',
    },
    password: {
      missing: 'Write the password.',
      'too-short': (least: number, got: number) =>
        `${plural(got, 'character', 'characters')} so far: ${least} are needed. Add a word or two.`,
      'too-long': 'That is longer than 256 characters.',
      guessed: (parts: string, left: number, needed: number) =>
        `${parts}. Without that, ${plural(left, 'character is', 'characters are')} left, and ${needed} are needed: take words that do not belong together.`,
      why: {
        common: (part: string) => `“${part}” does not count, everybody tries it`,
        context: (part: string) => `“${part}” does not count, it is a name from here`,
        run: (part: string) => `“${part}” does not count, it only runs on`,
        repeated: (part: string) => `“${part}” counts once, it is said again`,
      },
      'easily-guessed': 'That is among what everybody would try first. Take words that do not belong together.',
    },
    code: {
      missing: 'Type the code that the server printed.',
      wrong: 'That is not the code. Copy it from the terminal, or start the server again for a new one.',
    },
    farms: 'Choose at least one farm for a grower.',
    wrong:
      'That name and that password do not belong together. Look at both with “Show”, or ask a coordinator for a link for a new password.',
    wait: (seconds: number) =>
      `Too many attempts. Try again in ${seconds < 90 ? plural(seconds, 'second', 'seconds') : plural(Math.ceil(seconds / 60), 'minute', 'minutes')}.`,
    unreachable: 'The server does not answer. What you typed stays here; try again in a moment.',
    other: (said: string) => `The server refused: ${said}`,
    lastCoordinator: 'The last coordinator stays one. Make somebody else a coordinator first.',
  },

  signIn: {
    title: 'Sign in',
    lead: 'This program is open to the people who were invited to it.',
    submit: 'Sign in',
    forgot: 'Password forgotten? A coordinator can make a link with which you choose a new one.',
    noAccounts: 'This machine has no accounts: whoever sits at it is the coordinator.',
    already: (name: string) => `Signed in as ${name}.`,
  },
  again: {
    title: 'Your session has ended',
    text: 'Sign in to go on. What you typed on this page is still there.',
    other: 'I am somebody else',
  },
  first: {
    title: 'The first coordinator',
    lead: 'Nobody has joined this program yet. Whoever started the server sees a code in its terminal; with it you become the coordinator, who invites all others.',
    code: 'Code from the terminal',
    codeHint: 'It works once.',
    submit: 'Become the coordinator',
    done: 'This program has its people already. Sign in, or ask a coordinator for an invitation.',
  },
  join: {
    title: (program: string) => `Join ${program}`,
    titleAgain: 'Choose a new password',
    reading: 'Reading the invitation …',
    as: (role: string) => `You are invited as ${role}.`,
    farms: (farms: string) => `Farms: ${farms}.`,
    again: (name: string) => `For ${name}. The old password stops working, and every other session ends.`,
    until: (date: string) => `The link holds until ${date}.`,
    submit: 'Join',
    submitAgain: 'Use this password',
    homeScreen: 'Once you are in, the page More explains how Duskwatch comes onto your home screen.',
    invalid: 'This link does not hold any more',
    invalidText: 'It was used, withdrawn, or is older than 7 days. Ask a coordinator for a new one.',
    signedIn: (name: string) => `You are signed in as ${name}. Sign out first to join as somebody else.`,
  },

  people: {
    title: 'People',
    lead: (n: number) => plural(n, 'person has joined', 'people have joined'),
    loading: 'Reading who is here …',
    single: {
      title: 'One machine, no accounts',
      text: 'Whoever sits at this machine is the coordinator, and nobody else can reach the program. To let others in, start it with accounts: the terminal then prints a code for the first coordinator, who invites scouts, growers and readers.',
      command: 'npx duskwatch serve --accounts',
      network:
        'For phones and other machines on the network, also name the address to listen at, and put a proxy with https in front:',
      networkCommand: 'npx duskwatch serve --accounts --host 0.0.0.0 --origin https://your.address',
      keeps: 'Everything recorded so far stays as it is.',
    },
    columns: { name: 'Name', role: 'Role', farms: 'Farms', state: 'May sign in', acts: 'Password' },
    you: 'you',
    allFarms: 'all',
    noPlaces: 'none',
    farmsOf: (name: string) => `Farms of ${name}`,
    roleOf: (name: string) => `Role of ${name}`,
    mayOf: (name: string) => `${name} may sign in`,
    yes: 'yes',
    no: 'no',
    chooseFarms: 'Choose the farms of the new grower first, then save.',
    saveFarms: 'Save the farms',
    newPassword: 'Link for a new password',
    newPasswordOf: (name: string) => `Link for a new password for ${name}`,
    changed: {
      role: (name: string, role: string) => `${name} is now ${role}.`,
      farms: (name: string, farms: string) => `${name} now sees ${farms}.`,
      disabled: (name: string) => `${name} may no longer sign in. What they wrote stays.`,
      enabled: (name: string) => `${name} may sign in again.`,
    },
    undo: 'Undo',
    ends: 'A change ends the person’s sessions: they sign in again and see what is now theirs.',
    rolesTitle: 'What each role may do',
    failed: (why: string) => `Nothing was changed. ${why}`,
  },
  invite: {
    title: 'Invite somebody',
    role: 'As',
    farms: 'Farms',
    noFarms: 'There are no farms yet: add fields first.',
    submit: 'Make a link',
    made: 'Send this link to one person. It works once.',
    madeFor: (name: string) => `Send this link to ${name}. With it they choose a new password; it works once.`,
    link: 'Link',
    copy: 'Copy the link',
    copied: 'Copied.',
    copyFailed: 'The browser refused to copy: select the link and copy it by hand.',
    until: (date: string) => `Holds until ${date}.`,
    onlyNow: 'It is shown only now.',
  },
  open: {
    title: 'Open invitations',
    none: 'No invitation is open.',
    for: { newcomer: (role: string) => `for a new ${role}`, password: (name: string) => `new password for ${name}` },
    by: (name: string, date: string) => `by ${name}, holds until ${date}`,
    withdraw: 'Withdraw',
    withdrawOf: (what: string) => `Withdraw the invitation ${what}`,
    withdrawn: 'Withdrawn: the link no longer works.',
  },
  log: {
    title: 'What changed about people',
    when: 'When',
    who: 'Who',
    what: 'What',
    none: 'Nothing yet.',
    actions: {
      'first-person': 'became the first coordinator',
      invited: 'made an invitation',
      'invitation-withdrawn': 'withdrew an invitation',
      joined: 'joined',
      'new-password': 'took a new password',
      'role-changed': 'changed the role',
      'farms-changed': 'changed the farms',
      disabled: 'ended signing in',
      enabled: 'allowed signing in again',
    },
    of: (whom: string) => `of ${whom}`,
  },

  you: {
    title: 'You',
    as: (role: string) => `Role: ${role}`,
    signOut: 'Sign out',
    everywhere: 'Sign out everywhere',
    everywhereText: 'Ends your sessions on every machine and phone, this one too.',
    unsent: (n: number) =>
      `${plural(n, 'record', 'records')} of yours ${n === 1 ? 'waits' : 'wait'} on this machine and will be sent when you sign in here again.`,
    single: 'Whoever sits at this machine is the coordinator; there is nobody to sign out.',
  },
};

export type PeopleWords = typeof peopleEn;
