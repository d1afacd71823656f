/** Every rule has a test that cites it, and every citation is of a rule. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

const rules = readFileSync(join(import.meta.dirname, '../RULES.md'), 'utf8')
const numbered = [...rules.matchAll(/^- \*\*(S\d+)\*\*/gm)].map(([, number]) => number)
const cited = readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts'))
  .map((name) => readFileSync(join(import.meta.dirname, name), 'utf8'))
  .flatMap((source) => [...source.matchAll(/\(\s*['"`](S\d+): /g)])
  .map(([, number]) => number)

describe('the rules of sync', () => {
  it('are numbered without a gap', () => {
    expect(numbered).toEqual(numbered.map((_, index) => `S${String(index + 1)}`))
    expect(numbered).toContain('S31')
  })

  it('are each cited by a test', () => {
    expect(numbered.filter((number) => !cited.includes(number))).toEqual([])
  })

  it('are all that tests cite', () => {
    expect(cited.filter((number) => !numbered.includes(number))).toEqual([])
  })
})
