/** Every string of putting the app on a home screen in English; the browsers' own words from memory. */
export const homeScreenEn = {
  title: 'On your home screen',
  why: 'From its own icon Duskwatch opens without the browser’s bars, and without signal.',
  done: 'Duskwatch is on this home screen.',
  add: 'Add to home screen',
  others: 'Other kinds of phone',
  kinds: {
    iphone: {
      name: 'iPhone and iPad',
      steps: ['Tap Share, the square with an arrow that points up.', 'Scroll down and tap “Add to Home Screen”.', 'Tap “Add”.'],
    },
    'android-chrome': {
      name: 'Android with Chrome',
      steps: ['Tap ⋮ at the top right.', 'Tap “Add to Home screen”.', 'Tap “Install”.'],
    },
    'android-firefox': {
      name: 'Android with Firefox',
      steps: ['Tap ⋮.', 'Tap “Add app to Home screen”.', 'Tap “Add”.'],
    },
    'android-samsung': {
      name: 'Android with Samsung Internet',
      steps: ['Tap ☰ at the bottom right.', 'Tap “Add page to”.', 'Tap “Home screen”.'],
    },
    other: {
      name: 'Another browser',
      steps: ['Open the browser’s menu.', 'Look for “Install” or “Add to Home screen”.'],
    },
  },
};

export type HomeScreenWords = typeof homeScreenEn;
