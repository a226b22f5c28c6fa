/** The import arrows of DEVELOPERS.md. `npm run lint` fails on any that points the wrong way. */
const outside = (from, allowed) => ({
  from: { path: `^${from}` },
  to: { path: '^(shared-lib|electron|renderer|tests)/', pathNot: allowed },
});

module.exports = {
  forbidden: [
    {
      name: 'shared-lib-is-independent',
      severity: 'error',
      comment: 'The trade itself imports nothing of ours.',
      ...outside('shared-lib/', '^shared-lib/'),
    },
    {
      name: 'shared-lib-is-pure',
      severity: 'error',
      comment: 'No I/O, no Node, no DOM: only the pure libraries on this list.',
      from: { path: '^shared-lib/' },
      to: {
        dependencyTypes: ['core', 'npm', 'npm-dev', 'npm-optional', 'npm-peer'],
        pathNot: 'node_modules/(zod|canonicalize|@dagrejs/dagre|d3-scale|d3-delaunay|d3-contour|@types/d3-[a-z]+)/',
      },
    },
    {
      name: 'recorder-knows-no-window',
      severity: 'error',
      comment: 'Runs in plain Node.',
      ...outside('electron/recorder/', '^(electron/recorder|shared-lib)/'),
    },
    {
      name: 'cli-drives-the-recorder',
      severity: 'error',
      ...outside('electron/cli/', '^(electron/cli|electron/recorder|shared-lib)/'),
    },
    {
      name: 'shell-relays-only',
      severity: 'error',
      ...outside('electron/shell/', '^(electron/shell|shared-lib/contract)/'),
    },
    {
      name: 'no-native-module-in-electron',
      severity: 'error',
      from: { path: '^(electron/shell|renderer)/' },
      to: { path: 'node_modules/(better-sqlite3|sharp|heic-decode|@myriaddreamin)/' },
    },
    { name: 'renderer-has-no-node', severity: 'error', ...outside('renderer/', '^(renderer|shared-lib)/') },
    {
      name: 'renderer-has-no-core',
      severity: 'error',
      from: { path: '^renderer/', pathNot: 'vite\\.config\\.ts$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'electron-only-in-the-shell',
      severity: 'error',
      from: { pathNot: '^(electron/(shell|start)|tests)/' },
      to: { path: 'node_modules/electron/' },
    },
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    { name: 'nothing-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    parser: 'swc',
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)dist/|^assets/' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.json'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
