/**
 * Who may import whom. ROOMS is the order, once: the rules below are made from it, and
 * tests/unit/room-order.test.ts holds the drawing in DEVELOPERS.md against it.
 * A room imports from the rooms before it, save those it is told `not` to, and from itself.
 *
 * @typedef {{ room: string, folder: string, not: string[], why: string, instead: string }} Room
 * @type {Room[]}
 */
export const ROOMS = [
  {
    room: 'units',
    folder: 'src/units',
    not: [],
    why: 'Quantities and plane geometry know nothing of corals',
    instead: 'Move what needs corals to the first room that knows them.',
  },
  {
    room: 'stats',
    folder: 'src/stats',
    not: [],
    why: 'Textbook statistics take plain numbers and give plain numbers',
    instead: 'Let the caller pick the numbers out.',
  },
  {
    room: 'model',
    folder: 'src/model',
    not: ['stats'],
    why: 'The engine is pure and knows neither plans nor pictures',
    instead: 'Put what it has to be told in model/layout.ts and fill it in plan/compile.ts.',
  },
  {
    room: 'measure',
    folder: 'src/measure',
    not: [],
    why: 'A measure reads a State and nothing else, so that it holds for any plan',
    instead: 'Hand the measure what it needs as an argument.',
  },
  {
    room: 'plan',
    folder: 'src/plan',
    not: [],
    why: 'A plan is what the grower intends; it does not know who runs, stores or shows it',
    instead: 'Let the caller pass the plan on.',
  },
  {
    room: 'trials',
    folder: 'src/trials',
    not: [],
    why: 'What a log of trials teaches knows neither who keeps it nor who shows it',
    instead: 'Take text or rows, and give numbers with their reasons.',
  },
  {
    room: 'lessons',
    folder: 'src/lessons',
    not: [],
    why: 'A lesson is data: what it says, grows, asks and claims, without the page that shows it',
    instead: 'Put what shows a lesson in view/school, and what keeps progress in keep.',
  },
  {
    room: 'skin',
    folder: 'src/skin',
    not: [],
    why: 'How a grown tile looks, as plain numbers that the page and the command line both draw from',
    instead: 'Return arrays, and let view/tile or cli/png.ts draw them.',
  },
  {
    room: 'picture',
    folder: 'src/picture',
    not: [],
    why: 'The drawn tile: it runs beside the page, in a worker, and sees a scene and a frame only',
    instead: 'Put what it has to be told in picture/scene.ts.',
  },
  {
    room: 'sheet',
    folder: 'src/sheet',
    not: [],
    why: 'What is printed is words and millimetres, not components',
    instead: 'Return data and let view draw it.',
  },
  {
    room: 'checks',
    folder: 'src/checks',
    not: [],
    why: 'A published check is data that tests, the command line and the page read alike',
    instead: 'Keep threads and the page out of it: a check calls the engine itself.',
  },
  {
    room: 'workers',
    folder: 'workers',
    not: [],
    why: 'A worker has no page',
    instead: 'Say it in workers/protocol.ts and let jobs answer.',
  },
  {
    room: 'keep',
    folder: 'src/keep',
    not: [],
    why: 'Storage knows records, not runs and not screens',
    instead: 'Let view/desk.svelte.ts hand it what is to be written.',
  },
  {
    room: 'jobs',
    folder: 'src/jobs',
    not: ['keep'],
    why: "The page's side of the workers knows runs, not storage and not screens",
    instead: 'Take a callback, and let view/desk.svelte.ts join the two.',
  },
  {
    room: 'view',
    folder: 'src/view',
    not: [],
    why: 'The page does not read files or print to a terminal',
    instead: 'Move what both need to a room before them.',
  },
  {
    room: 'cli',
    folder: 'src/cli',
    not: ['workers', 'keep', 'jobs', 'view'],
    why: 'The command line is thin and runs the same engine without a page or a worker',
    instead: 'Call plan, model and measure directly.',
  },
];

const inFolder = (/** @type {string[]} */ folders) => `^(${folders.join('|')})/`;

/** One rule a room: what it must not import. */
const order = ROOMS.map(({ room, folder, not, why, instead }, place) => {
  const later = ROOMS.filter((other, at) => at > place || not.includes(other.room));
  return {
    name: `room-${room}`,
    severity: 'error',
    comment: `${why}. ${instead}`,
    from: { path: inFolder([folder]) },
    to: { path: later.length > 0 ? inFolder(later.map((other) => other.folder)) : '^$' },
  };
});

/** A package that only some places may import. */
const only = (
  /** @type {string} */ name,
  /** @type {string} */ packages,
  /** @type {string} */ allowed,
  /** @type {string} */ comment,
) => ({
  name: `only-${name}`,
  severity: 'error',
  comment,
  from: { path: '^(src|workers)/', pathNot: allowed },
  to: { path: packages },
});

const VIEWS = 'grow|bench|odds|trials|school|sheet|knows';

export default {
  forbidden: [
    ...order,
    {
      name: 'no-cycle',
      severity: 'error',
      comment: 'Two modules that need each other are one module, or a third is missing between them.',
      from: {},
      to: { circular: true },
    },
    only(
      'pixi-in-picture',
      'node_modules/pixi\\.js/',
      '^src/picture/',
      'One room draws on the graphics card, in a worker, so that the page is never held up. Draw there.',
    ),
    only(
      'svelte-in-view',
      'node_modules/svelte/',
      '^src/view/',
      'Only the page has components; all before it runs in a worker or in Node too.',
    ),
    only(
      'comlink-in-channel',
      'node_modules/comlink/',
      '^(workers/|src/jobs/(channel|canvas)\\.ts$)',
      'A call to a dead worker never settles, and only jobs/channel.ts and jobs/canvas.ts watch for that.',
    ),
    only(
      'idb-in-keep',
      'node_modules/idb/',
      '^src/keep/',
      'One room writes storage, so that no record escapes its migration. Call keep/database.ts.',
    ),
    only(
      'papaparse-in-trials',
      'node_modules/(@types/)?papaparse/',
      '^src/trials/csv-table\\.ts$',
      'One module reads CSV, so that every bad row gets its line and its reason. Call readTable.',
    ),
    {
      name: 'model-packages',
      severity: 'error',
      comment:
        'The engine imports units and seedrandom only, so that (plan, seed) alone decides the result. Write the few lines it needs.',
      from: { path: '^src/model/' },
      to: { path: 'node_modules/', pathNot: 'node_modules/(@types/)?seedrandom/' },
    },
    {
      name: 'node-in-cli',
      severity: 'error',
      comment:
        'Everything but the command line has to run in a browser. Read files in src/cli and pass text on.',
      from: { path: '^(src|workers)/', pathNot: '^src/cli/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'nothing-imports-tests',
      severity: 'error',
      comment: 'What the program needs is not a test. Move it to the room it belongs to.',
      from: { path: '^(src|workers)/' },
      to: { path: '^(tests|\\.ci)/' },
    },
    {
      name: 'views-apart',
      severity: 'error',
      comment:
        'One view must be able to fail or change without another. Move what both need to view/fields, view/tile or the desk.',
      from: { path: `^src/view/(${VIEWS})/` },
      to: { path: `^src/view/(${VIEWS})/`, pathNot: '^src/view/$1/' },
    },
    {
      name: 'found',
      severity: 'error',
      comment: 'An import that leads nowhere. Correct the path, or name the package in package.json.',
      from: { path: '^(src|workers)/' },
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true, // an import of types alone is an import too
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['svelte', 'import', 'browser', 'default', 'types'],
      extensions: ['.ts', '.svelte.ts', '.svelte', '.js', '.mjs', '.json'],
    },
  },
};
