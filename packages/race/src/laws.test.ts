import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const here = import.meta.dirname
const laws = readFileSync(join(here, '../LAWS.md'), 'utf8')
const numbered = [...laws.matchAll(/^- \*\*(L\d+)\*\*/gm)].map((match) => match[1])

const titles = readdirSync(here, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts'))
  .flatMap((file) => [
    ...readFileSync(join(here, file), 'utf8').matchAll(/\btest\(\s*['`"](L\d+):/g),
  ])
const cited = new Set(titles.map((match) => match[1]))

test('every law is numbered once, in order', () => {
  expect(numbered).toEqual(numbered.map((_, place) => `L${place + 1}`))
  expect(numbered.length).toBeGreaterThan(0)
})

test('every law is cited by a test title', () => {
  expect(numbered.filter((law) => !cited.has(law))).toEqual([])
})

test('every citation is of a law that exists', () => {
  expect([...cited].filter((law) => !numbered.includes(law))).toEqual([])
})
