/** Which folder may import which: data flows document → compile → run → results → statistics → charts → components. */
const only = (from, to, name) => ({ name, severity: 'error', from: { path: `^src/(${from})/` }, to: { path: '^src/', pathNot: `^src/(${to})/` } });
const noLibrary = (from, libraries, name) => ({ name, severity: 'error', from: { path: `^src/(${from})/` }, to: { path: `node_modules/(${libraries})/` } });

module.exports = {
  forbidden: [
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    only('random', 'random', 'random-stands-alone'),
    only('text', 'text|decisions|results|statistics|model', 'text-words-results'),
    only('model', 'model|statistics', 'model-is-the-document'),
    only('genetics', 'genetics|random|model|statistics', 'genetics-is-pure'),
    only('statistics', 'statistics|results|random', 'statistics-is-pure'),
    only('results', 'results|statistics|model', 'results-are-data'),
    only('catalogue', 'catalogue|model|statistics', 'catalogue-is-pure-data'),
    only('start', 'start|model|catalogue|statistics', 'start-builds-documents'),
    only('engine', 'engine|genetics|random|model|statistics|results|seasonlog', 'engine-is-pure'),
    only('workers', 'workers|engine|model|results|statistics|random', 'workers-run-the-engine'),
    only('decisions', 'decisions|engine|genetics|model|random|results|statistics|workers', 'decisions-ask-the-engine'),
    only('storage', 'storage|model', 'storage-keeps-documents'),
    only('handout', 'handout|charts|model|results|statistics|text', 'handout-is-pure'),
    only('seasonlog', 'seasonlog|model|statistics|random|genetics|results', 'seasonlog-learns'),
    only('charts', 'charts|decisions|statistics|results|text', 'charts-draw-results'),
    only('state', 'state|model|catalogue|decisions|seasonlog|workers|storage|results|statistics|engine|text', 'state-is-below-components'),
    noLibrary(
      'random|model|catalogue|start|genetics|engine|statistics|results|workers|decisions|seasonlog|storage|state|text',
      'lit|lit-html|@lit|d3.*',
      'no-screen-libraries-in-the-core',
    ),
    {
      name: 'one-importer-of-seedrandom',
      severity: 'error',
      from: { path: '^(src|sims)/', pathNot: '^src/random/' },
      to: { path: 'node_modules/(@types/)?seedrandom' },
    },
    { name: 'app-composes', severity: 'error', from: { path: '^src/', pathNot: '^src/app/' }, to: { path: '^src/app/' } },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
  },
};
