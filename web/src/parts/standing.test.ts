import { expect, it } from 'vitest'
import { clockWords, lineWords, savedWords } from './standing.ts'

it('counts what is kept on this device only', () => {
  expect([savedWords(0), savedWords(3)]).toEqual(['all saved', '3 kept on this device'])
})

it('says for how long no server was heard, and that all goes on', () => {
  const silent = { connection: 'silent', silentForMs: 12_400, keptHere: 0 } as const
  expect(lineWords(silent)).toBe('no server for 0:12: counting and recording go on')
})

it('leaves the time out where the server was never heard', () => {
  const silent = { connection: 'silent', silentForMs: Infinity, keptHere: 0 } as const
  expect(lineWords(silent)).toBe('no server: counting and recording go on')
})

it('is quiet while the server is there', () => {
  expect(lineWords({ connection: 'live', silentForMs: 0, keptHere: 3 })).toBeUndefined()
})

it('says how far off the clock may be, rounded up to a tenth', () => {
  expect(clockWords({ standing: 'set', boundMs: 12 })).toBe('clock set')
  expect(clockWords({ standing: 'roughly', boundMs: 201 })).toBe('clock to ± 0.3 s')
  expect(clockWords({ standing: 'notSure', boundMs: 900 })).toBe('clock not sure')
})

it('puts the server’s own doubt first', () => {
  const doubt = { why: 'behindItsMark' } as const
  expect(clockWords({ standing: 'set', boundMs: 12, doubt })).toBe('the server’s clock is in doubt')
})
