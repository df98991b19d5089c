// The rooms of the house and which way the arrows point (see ARCHITECTURE.md).
// tests/guards/boundaries.test.ts plants a violation of each rule and checks
// that every path named here still matches a file.
const core = (rooms) => `^src/core/(${rooms})/`;
const forbid = (name, from, to, comment) => ({ name, severity: 'error', comment, from: { path: from }, to: { path: to } });

module.exports = {
  forbidden: [
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
    { name: 'core-knows-no-edge', severity: 'error', comment: 'The core may not know who uses it; its tests may read the compiled tables.', from: { path: '^src/core/', pathNot: '\\.test\\.ts$' }, to: { path: '^src/(app|adapters|server|cli|web|messages)/' } },
    { name: 'core-does-no-io', severity: 'error', from: { path: '^src/core/', pathNot: '\\.test\\.ts$' }, to: { dependencyTypes: ['core'] } },
    forbid('quantity-stands-alone', core('quantity'), core('calendar|foods|dish|cycle|scheme|statements|cooking|people')),
    forbid('calendar-on-quantity', core('calendar'), core('foods|dish|cycle|scheme|statements|cooking|people')),
    forbid('foods-on-quantity', core('foods'), core('dish|cycle|scheme|statements|cooking|people')),
    forbid('middle-rooms-look-down', core('dish|cycle|people'), core('scheme|statements|cooking')),
    forbid('scheme-looks-down', core('scheme'), core('statements|cooking')),
    {
      name: 'siblings-by-index-only', severity: 'error',
      from: { path: '^src/core/([^/]+)/' },
      to: { path: '^src/core/([^/]+)/', pathNot: ['^src/core/$1/', '^src/core/[^/]+/index\\.ts$'] },
    },
    forbid('app-knows-no-edge', '^src/app/', '^src/(adapters|server|cli|web)/', 'Use cases declare ports; the adapters fill them.'),
    forbid('adapters-know-no-face', '^src/adapters/', '^src/(server|cli|web)/'),
    forbid('web-reads-no-disk', '^src/web/', '^src/(adapters|server|cli)/'),
    { name: 'only-the-store-speaks-sql', severity: 'error', from: { path: '^src/', pathNot: '^src/adapters/store/' }, to: { path: 'node_modules/(kysely|libsql)' } },
  ],
  options: { tsPreCompilationDeps: true, tsConfig: { fileName: 'tsconfig.json' }, doNotFollow: { path: 'node_modules' }, enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default', 'types'] } },
};
