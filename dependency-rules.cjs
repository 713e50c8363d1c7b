/** Which package may import which: the core knows nobody, and nobody but the core holds science. */
const only = (from, allowed) => ({
  name: `${from}-imports-only-${allowed.join('-and-') || 'itself'}`,
  severity: 'error',
  from: { path: `^packages/${from}/src` },
  to: { path: '^packages/[^/]+/', pathNot: [from, ...allowed].map((name) => `^packages/${name}/`) },
});

/** The rooms of the app, from the ground up: each imports from those before it, and no page from another page's room. */
const WEB_FLOORS = ['browser', 'text', 'format', 'sync', 'api', 'ui', 'shared', '(desk|phone|door)', 'app'];
const web = (room) => `^packages/web/src/${room}/`;
const webFloors = WEB_FLOORS.slice(0, -1).map((room, floor) => ({
  name: `web-${room.replace(/\W+/g, '-').replace(/^-|-$/g, '')}-does-not-import-up`,
  severity: 'error',
  from: { path: web(room) },
  to: { path: WEB_FLOORS.slice(floor + 1).map(web) },
}));

/** The rooms of the core, from the ground up: each imports from those before it, in types as well. */
const CORE_FLOORS = [
  'base',
  'statistics',
  'people',
  'records',
  'weather',
  'heat',
  'catalogue',
  'catch',
  'forecast',
  'flight',
  'scouting',
  'advice',
  'planning',
  'review',
  'questions',
  'answers',
  'text',
];
const core = (room) => `^packages/core/src/${room}/`;
const coreFloors = CORE_FLOORS.slice(0, -1).map((room, floor) => ({
  name: `core-${room}-does-not-import-up`,
  severity: 'error',
  // A test may look at its room from above.
  from: { path: core(room), pathNot: '\\.test(ing)?\\.ts$' },
  to: { path: CORE_FLOORS.slice(floor + 1).map(core) },
}));

module.exports = {
  forbidden: [
    only('core', []),
    only('exchange', ['core']),
    only('store', ['core']),
    only('server', ['core', 'store', 'exchange']),
    only('web', ['core', 'exchange']),
    {
      name: 'sheets-are-read-beside-the-page',
      severity: 'error',
      comment: 'Readers of files are large and slow: a worker has them, and the page has its answers.',
      from: { path: '^packages/web/src', pathNot: '/import\\.worker\\.ts$' },
      to: { path: '^packages/exchange/', dependencyTypesNot: ['type-only'] },
    },
    only('cli', ['core', 'store', 'exchange', 'server']),
    {
      name: 'core-does-no-io',
      severity: 'error',
      comment: 'The core runs unchanged on a phone: no Node API.',
      from: { path: '^packages/core/src', pathNot: '\\.test\\.ts$' },
      to: { dependencyTypes: ['core'] },
    },
    ...coreFloors,
    ...webFloors,
    {
      name: 'web-pages-do-not-import-one-another',
      severity: 'error',
      comment: 'What two pages need stands in a shared room.',
      from: { path: '^packages/web/src/((?:desk|phone)/[^/]+|door)/' },
      to: { path: '^packages/web/src/(desk|phone|door)/', pathNot: ['^packages/web/src/$1/', '^packages/web/src/phone/shared/'] },
    },
    {
      name: 'web-desk-knows-no-phone',
      severity: 'error',
      from: { path: '^packages/web/src/(desk|door)/' },
      to: { path: '^packages/web/src/phone/' },
    },
    {
      name: 'web-phone-shared-knows-no-page',
      severity: 'error',
      from: { path: '^packages/web/src/phone/shared/' },
      to: { path: '^packages/web/src/phone/(?!shared/)' },
    },
    { name: 'no-loops', severity: 'error', comment: 'Of types neither.', from: {}, to: { circular: true } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(node_modules|dist)' },
    tsPreCompilationDeps: true,
    combinedDependencies: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
  },
};
