/** Which package may import which: the core knows nobody, and nobody but the core holds science. */
const only = (from, allowed) => ({
  name: `${from}-imports-only-${allowed.join('-and-') || 'itself'}`,
  severity: 'error',
  from: { path: `^packages/${from}/src` },
  to: { path: '^packages/[^/]+/', pathNot: [from, ...allowed].map((name) => `^packages/${name}/`) },
});

module.exports = {
  forbidden: [
    only('core', []),
    only('exchange', ['core']),
    only('store', ['core']),
    only('server', ['core', 'store', 'exchange']),
    only('web', ['core']),
    only('cli', ['core', 'store', 'exchange', 'server']),
    {
      name: 'core-does-no-io',
      severity: 'error',
      comment: 'The core runs unchanged on a phone: no Node API.',
      from: { path: '^packages/core/src', pathNot: '\\.test\\.ts$' },
      to: { dependencyTypes: ['core'] },
    },
    { name: 'no-loops', severity: 'error', from: {}, to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } } },
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
