import svelte from 'eslint-plugin-svelte';
import tseslint from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

const INEXACT =
  'acos acosh asin asinh atan atan2 atanh cbrt cos cosh exp expm1 hypot log log10 log1p log2 pow sin sinh tan tanh';

/** Not of the language core, or different from run to run. */
const HOST = ['Date', 'performance', 'crypto', 'setTimeout', 'setInterval', 'console', 'Intl'];

const NO_DEFAULT = {
  selector: 'ExportDefaultDeclaration',
  message: 'Export by name: a thing then has one name everywhere.',
};
const NO_PASSING_ON = {
  selector: 'ExportAllDeclaration',
  message: 'Import from the module that holds it; a file that only re-exports hides where things live.',
};

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', '.cache/'] },
  // No comment may switch a rule off: a rule that is wrong is changed here, for all, with its reason.
  { linterOptions: { noInlineConfig: true } },
  tseslint.configs.strictTypeChecked,
  svelte.configs.recommended,
  {
    languageOptions: {
      parserOptions: { projectService: true, extraFileExtensions: ['.svelte'] },
    },
    rules: {
      // The engine is typed arrays, so noUncheckedIndexedAccess is off and the compiler takes every index
      // for found; this rule would then call honest checks of an index needless.
      '@typescript-eslint/no-unnecessary-condition': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-confusing-void-expression': [
        'error',
        { ignoreArrowShorthand: true, ignoreVoidReturningFunctions: true },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      // As the compiler has it: a leading underscore says that the place is needed and the value is not.
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'no-restricted-syntax': ['error', NO_DEFAULT, NO_PASSING_ON],
      'max-lines': ['error', 350],
      eqeqeq: 'error',
      'no-console': 'error',
      // The desk replaces its state whole; a Set or Map that is scratch inside a function needs no proxy.
      'svelte/prefer-svelte-reactivity': 'off',
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: tseslint.parser, svelteConfig } },
  },
  {
    // The linter takes what another component hands to a callback for any; svelte-check knows its type and checks it.
    files: ['**/*.svelte'],
    rules: Object.fromEntries(
      ['argument', 'assignment', 'call', 'member-access', 'return'].map((use) => [
        `@typescript-eslint/no-unsafe-${use}`,
        'off',
      ]),
    ),
  },
  {
    // Numbers of a typed array are always there; a neighbour that the layout's border promises is too.
    files: ['src/model/**', 'src/measure/**', 'src/checks/**'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    // (plan, seed) decides every bit: only + - * / and sqrt give the same bits on every engine.
    files: ['src/model/**'],
    rules: {
      'no-restricted-properties': [
        'error',
        {
          object: 'Math',
          property: 'random',
          message: 'Draw from model/noise.ts: chance comes from the seed.',
        },
        ...INEXACT.split(' ').map((property) => ({
          object: 'Math',
          property,
          message: 'Its last bits differ between browsers: use + - * / sqrt, or a table of our own.',
        })),
      ],
      'no-restricted-globals': [
        'error',
        ...HOST.map((name) => ({ name, message: 'The engine knows no host: pass in what it needs.' })),
      ],
      'no-restricted-syntax': [
        'error',
        NO_DEFAULT,
        NO_PASSING_ON,
        {
          selector: "BinaryExpression[operator='**'], AssignmentExpression[operator='**=']",
          message: 'Its last bits differ between browsers: multiply.',
        },
        {
          selector: "MemberExpression[object.name='Math'][computed=true]",
          message: 'Name the function, so that the list of exact ones can be checked.',
        },
        {
          selector: "VariableDeclarator[init.name='Math']",
          message: 'Write Math.x in full, so that the list of exact ones can be checked.',
        },
      ],
    },
  },
  { files: ['src/cli/**', 'tests/{bench,browser}/**', '.ci/**'], rules: { 'no-console': 'off' } },
  // Declares a package that exports by default.
  { files: ['**/*.d.ts'], rules: { 'no-restricted-syntax': 'off' } },
  {
    // Tools' own configurations export by default, and no tsconfig.json lists them.
    files: ['*.config.{js,ts}', '.dependency-cruiser.mjs', '.ci/**'],
    extends: [tseslint.configs.disableTypeChecked],
    languageOptions: { parserOptions: { projectService: false } },
    rules: { 'no-restricted-syntax': 'off' },
  },
);
