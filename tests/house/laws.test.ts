/** Each law that ESLint holds is fed a line that breaks it, so that no law is only written down. */
import { ESLint } from 'eslint'
import typescript from 'typescript-eslint'
import { describe, expect, it } from 'vitest'

const root = new URL('../../', import.meta.url).pathname
const typed = new ESLint({
  cwd: root,
  overrideConfig: {
    languageOptions: {
      parserOptions: {
        projectService: {
          allowDefaultProject: [
            'packages/*/src/snippet.ts',
            '*/src/snippet.ts',
            'tests/house/snippet.test.ts',
          ],
        },
      },
    },
  },
})
/** The default project holds no components, and no law on them needs types. */
const untyped = new ESLint({ cwd: root, overrideConfig: typescript.configs.disableTypeChecked })

const race = 'packages/race/src/snippet.ts'
const sync = 'packages/sync/src/snippet.ts'
const server = 'server/src/snippet.ts'
const web = 'web/src/snippet.ts'
const component = 'web/src/Snippet.svelte'
const test = 'tests/house/snippet.test.ts'

const unreadable = 'cannot be parsed'

async function broken(filePath: string, code: string): Promise<(string | null)[]> {
  const eslint = filePath === component ? untyped : typed
  const [result] = await eslint.lintText(code, { filePath: root + filePath })
  return (result?.messages ?? []).map(({ ruleId, fatal }) => (fatal ? unreadable : ruleId))
}

const layers = 'boundaries/dependencies'
const syntax = 'no-restricted-syntax'
const imports = 'no-restricted-imports'
const globals = 'no-restricted-globals'
const properties = 'no-restricted-properties'
const script = (code: string) => `<script lang="ts">\n${code}\n</script>\n`
const lines = (count: number) => 'void 0\n'.repeat(count)

const laws: readonly [law: string, file: string, code: string, rule: string][] = [
  ['race imports nothing of ours', race, `import { a } from '@pitlamp/contract'`, layers],
  ['sync does not import the server', sync, `import { a } from '@pitlamp/server'`, layers],
  ['a package takes no way round by a path', sync, `import '../../race/src/index.ts'`, layers],
  ['web never imports the server', web, `import { a } from '@pitlamp/server'`, layers],
  ['web never reaches the server by a path', web, `import '../../server/src/main.ts'`, layers],
  ['the server does not import web', server, `import '../../web/src/main.ts'`, layers],
  ['a component is under the layer table', component, script(`import '@pitlamp/server'`), layers],
  ['a package never imports its own index', race, `import './index.ts'`, layers],
  ['no star exports', race, `export * from './entry.ts'`, syntax],
  ['only zod/mini', race, `import { z } from 'zod'`, imports],
  ['only zod/mini on the server', server, `import { z } from 'zod'`, imports],
  ['no I/O in a package', race, `import 'node:fs'`, imports],
  ['no Date.now in a package', race, `Date.now()`, properties],
  ['no new Date() in a package', race, `new Date()`, syntax],
  ['no chance in a package', race, `Math.random()`, properties],
  ['no inexact mathematics', race, `Math.exp(1)`, properties],
  ['no taking of inexact mathematics', race, `const { pow } = Math`, properties],
  ['no powers', race, `export const a = 2 ** 3`, syntax],
  ['no powers by assignment', race, `let a = 2\na **= 3`, syntax],
  ['no timers in a package', race, `setTimeout(() => 0, 1)`, globals],
  ['no performance in a package', race, `performance.now()`, globals],
  ['no console in a package', race, `console.log(1)`, globals],
  ['no process in a package', race, `process.exit()`, globals],
  ['no fetch in a package', race, `fetch('/')`, globals],
  ['no localeCompare in a package', race, `'a'.localeCompare('b')`, properties],
  ['no any', race, `export const a: any = 1`, '@typescript-eslint/no-explicit-any'],
  ['no file over 300 lines', race, lines(301), 'max-lines'],
  ['no component over 200 lines', component, '<p>a</p>\n'.repeat(201), 'max-lines'],
  [
    'no function over 60 lines',
    server,
    `export function a() {\n${lines(60)}}`,
    'max-lines-per-function',
  ],
  ['three parameters', server, `export function a(b, c, d, e) {}`, 'max-params'],
  ['no floating promises', server, `Promise.resolve(1)`, '@typescript-eslint/no-floating-promises'],
  [
    'exhaustive switches',
    server,
    `export function a(b: 'c' | 'd') { switch (b) { case 'c': return 1 } return 2 }`,
    '@typescript-eslint/switch-exhaustiveness-check',
  ],
  ['no enums', server, `export enum A { b }`, syntax],
  ['no default exports', server, `export default 1`, syntax],
  ['no default exports in web', web, `export default 1`, syntax],
  ['no literal style attribute', component, `<p style="color: red">a</p>`, syntax],
  ['no fetch in a component', component, script(`fetch('/')`), globals],
  ['no fold in a component', component, script(`import { fold } from '@pitlamp/race'`), imports],
  ['no skipped test', test, `it.skip('a', () => 0)`, syntax],
  ['no focused test', test, `describe.only('a', () => 0)`, syntax],
  ['no test left for later', test, `it.todo('a')`, syntax],
  ['no focused test behind another word', test, `it.concurrent.only('a', () => 0)`, syntax],
  ['no skipping on a condition', test, `it.skipIf(true)('a', () => 0)`, syntax],
]

describe('the laws', () => {
  it.each(laws)('%s', async (...[, file, code, rule]) => {
    expect(await broken(file, code)).toContain(rule)
  })
})

const allowed: readonly [what: string, file: string, code: string][] = [
  ['contract imports race', 'packages/contract/src/snippet.ts', `import '@pitlamp/race'\n`],
  ['web imports sync', web, `import '@pitlamp/sync'\n`],
  ['server imports node and zod/mini', server, `import 'node:fs'\nimport 'zod/mini'\n`],
  ['a date of a given instant', race, `export const a = new Date(0).toISOString()\n`],
  ['exact mathematics', race, `export const a = Math.floor(Math.sqrt(2))\n`],
  ['a style directive', component, `<p style:color="red">a</p>\n`],
  ['a test that skips with a reason', test, `it('a', (c) => { c.skip('no engine') })\n`],
]

describe('what the laws leave free', () => {
  it.each(allowed)('%s', async (...[, file, code]) => {
    const rules = [layers, syntax, imports, globals, properties, unreadable]
    expect((await broken(file, code)).filter((rule) => rules.includes(rule ?? ''))).toEqual([])
  })
})
