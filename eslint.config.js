// The laws of the house that a machine can hold. tests/house/laws.test.ts feeds each a bad line.
import js from '@eslint/js'
import boundaries from 'eslint-plugin-boundaries'
import svelte from 'eslint-plugin-svelte'
import globals from 'globals'
import typescript from 'typescript-eslint'

/** Who may import whom. A package of ours is imported by its name, never by a path into it. */
const layers = {
  race: [],
  contract: ['race'],
  sync: ['race', 'contract'],
  statistics: [],
  planner: [],
  forecast: ['race', 'statistics'],
  review: ['race', 'statistics', 'forecast'],
  server: ['race', 'contract', 'sync', 'statistics', 'planner', 'forecast', 'review'],
  web: ['race', 'contract', 'sync', 'forecast'],
}
const folderOf = (layer) => (['server', 'web'].includes(layer) ? layer : `packages/${layer}`)

const layerTable = {
  files: ['packages/*/src/**/*.ts', 'server/src/**/*.ts', 'web/src/**/*.{ts,svelte}'],
  plugins: { boundaries },
  settings: {
    'import/resolver': { node: { extensions: ['.ts', '.svelte', '.js'] } },
    'boundaries/elements': Object.keys(layers).map((layer) => ({
      type: layer,
      pattern: folderOf(layer),
    })),
  },
  rules: {
    'boundaries/no-unknown-files': 'error',
    'boundaries/dependencies': [
      'error',
      {
        default: 'disallow',
        checkAllOrigins: true,
        checkInternals: true,
        checkUnknownLocals: true,
        message: 'The layer table in eslint.config.js does not allow this import.',
        policies: [
          { allow: { to: { module: { source: '!@pitlamp/*', origin: '{external,core}' } } } },
          ...Object.entries(layers).flatMap(([layer, below]) => [
            { from: { element: { type: layer } }, allow: { to: { element: { type: layer } } } },
            ...below.map((name) => ({
              from: { element: { type: layer } },
              allow: { to: { module: { source: `@pitlamp/${name}` } } },
            })),
          ]),
          {
            disallow: { to: { file: { path: 'packages/*/src/index.ts' } } },
            message: 'Inside a package import the file, not the index.',
          },
        ],
      },
    ],
  },
}

const zodMini = { regex: '^zod(?!/mini$)', message: 'Use zod/mini: it is a fifth of the size.' }
const forbidImports = (...patterns) => ({
  'no-restricted-imports': ['error', { patterns: [zodMini, ...patterns] }],
})

const syntax = [
  ['TSEnumDeclaration', 'Use a union, or an object `as const`.'],
  ['ExportAllDeclaration', 'Name what is exported.'],
]
const namedExports = ['ExportDefaultDeclaration', 'Named exports only.']
const alwaysRun = [
  'MemberExpression[property.name=/^(only|skipIf|runIf|todo|fails)$/][object.name=/^(it|test|describe|suite)$/]',
  'MemberExpression[property.name=/^(only|skip|skipIf|runIf|todo|fails)$/][object.object.name=/^(it|test|describe|suite)$/]',
  'MemberExpression[property.name="skip"][object.name=/^(it|test|describe|suite)$/]',
  'Identifier[name=/^(xit|xtest|xdescribe|fit|fdescribe)$/]',
].map((selector) => [selector, 'Every test runs, every time.'])
const power = ['[operator=/^\\*\\*=?$/]', 'Engines differ in the last bit of a power.']
const wallClock = [
  'NewExpression[callee.name="Date"][arguments.length=0]',
  'No clock in a package.',
]
const styleAttribute = ['SvelteAttribute[key.name="style"]', 'Use style:x, which the CSP allows.']
const forbidSyntax = (...more) => ({
  'no-restricted-syntax': [
    'error',
    ...[...syntax, ...more].map(([selector, message]) => ({ selector, message })),
  ],
})

const ambient = [
  ...['performance', 'console', 'process', 'fetch', 'crypto', 'globalThis', 'Intl', 'Buffer'],
  ...['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'window', 'document'],
]
const inexact = [
  ...['random', 'exp', 'expm1', 'log', 'log2', 'log10', 'log1p', 'pow', 'cbrt', 'hypot'],
  ...['sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'atan2'],
  ...['sinh', 'cosh', 'tanh', 'asinh', 'acosh', 'atanh'],
]
const localised = ['localeCompare', 'toLocaleString', 'toLocaleLowerCase', 'toLocaleUpperCase']

/** One fold, both sides: the same answer in every engine, from nothing but the arguments. */
const purity = {
  files: ['packages/*/src/**/*.ts'],
  ignores: ['**/*.test.ts'],
  rules: {
    ...forbidSyntax(namedExports, power, wallClock),
    ...forbidImports({ regex: '^node:', message: 'A package has no I/O.' }),
    'no-restricted-globals': [
      'error',
      ...ambient.map((name) => ({ name, message: 'A package computes from its arguments only.' })),
    ],
    'no-restricted-properties': [
      'error',
      { object: 'Date', property: 'now', message: 'No clock in a package.' },
      ...inexact.map((property) => ({
        object: 'Math',
        property,
        message: 'No chance and no inexact mathematics: see @stdlib/math-base-special-*.',
      })),
      ...localised.map((property) => ({ property, message: 'Engines and machines differ.' })),
    ],
  },
}

const everywhere = {
  rules: {
    ...forbidSyntax(),
    ...forbidImports(),
    'max-lines': ['error', 300],
    'max-lines-per-function': ['error', 60],
    'max-params': ['error', 3],
    eqeqeq: 'error',
  },
}

const typed = {
  files: ['**/*.ts', '**/*.svelte'],
  extends: [typescript.configs.strictTypeChecked],
  languageOptions: {
    parserOptions: {
      projectService: true,
      tsconfigRootDir: import.meta.dirname,
      extraFileExtensions: ['.svelte'],
    },
  },
  rules: {
    ...forbidSyntax(namedExports),
    '@typescript-eslint/switch-exhaustiveness-check': [
      'error',
      { considerDefaultExhaustiveForUnions: true },
    ],
    '@typescript-eslint/consistent-type-imports': 'error',
    '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
    '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
    '@typescript-eslint/no-unused-vars': [
      'error',
      { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true },
    ],
  },
}

/** A component gets plain props and callbacks; its screen's model talks to the meeting. */
const components = {
  files: ['web/**/*.svelte'],
  rules: {
    ...forbidSyntax(styleAttribute),
    ...forbidImports(
      { group: ['socket.io-client', 'idb'], message: 'Connections belong in meeting/.' },
      { group: ['@pitlamp/race'], importNames: ['fold'], message: 'Fold in meeting/.' },
    ),
    // It knows that props and derived values are not assigned to by us.
    'prefer-const': 'off',
    'svelte/prefer-const': 'error',
    // Components are opaque to these; svelte-check sees their types.
    ...Object.fromEntries(
      ['argument', 'assignment', 'call', 'member-access', 'return'].map((what) => [
        `@typescript-eslint/no-unsafe-${what}`,
        'off',
      ]),
    ),
    'svelte/block-lang': ['error', { script: ['ts', null] }],
    'max-lines': ['error', 200],
    'no-restricted-globals': ['error', 'fetch', 'WebSocket', 'indexedDB', 'localStorage'],
  },
}

const tests = {
  files: ['**/*.test.ts', 'tests/**/*.ts'],
  rules: {
    ...forbidSyntax(namedExports, ...alwaysRun),
    // A describe is a chapter, not a function.
    'max-lines-per-function': 'off',
  },
}

export default typescript.config(
  { ignores: ['**/node_modules/', 'build/', 'data/', '.cache/', '**/*.d.ts'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  everywhere,
  typed,
  svelte.configs.recommended,
  layerTable,
  purity,
  {
    files: ['web/**/*.svelte', 'web/**/*.svelte.ts'],
    languageOptions: {
      globals: globals.browser,
      parserOptions: { parser: typescript.parser },
    },
  },
  components,
  tests,
  { files: ['**/*.config.ts', 'tests/*-environment.ts'], rules: forbidSyntax() },
  {
    files: ['**/*.{js,mjs}'],
    extends: [typescript.configs.disableTypeChecked],
    languageOptions: { globals: globals.node },
  },
)
