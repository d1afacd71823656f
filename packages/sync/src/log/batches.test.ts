import { describe, expect, it } from 'vitest'
import { nextBatch, wireBytes } from './batches.ts'
import { connectedScreen, note, play, screen, sent } from './entries.fixture.ts'

const plain = wireBytes(note(1, { body: '' }))

describe('the length of an entry on the wire', () => {
  it('S7: counts bytes of UTF-8, not characters', () => {
    // ü is two bytes, € three, the lamp four.
    expect(wireBytes(note(1, { body: 'ü' })) - plain).toBe(2)
    expect(wireBytes(note(1, { body: '€' })) - plain).toBe(3)
    expect(wireBytes(note(1, { body: '💡' })) - plain).toBe(4)
  })

  it('S7: counts the escapes of a body that is JSON itself', () => {
    // {"a":1} is seven bytes; its two quotes travel as \\" and make nine.
    expect(wireBytes(note(1, { body: '{"a":1}' })) - plain).toBe(9)
  })

  it('S7: agrees with what an encoder writes', () => {
    const entry = note(7, { body: JSON.stringify({ words: 'Grüße — 37 °C\n"gut" 💡 \u0001' }) })
    expect(wireBytes(entry)).toBe(Buffer.byteLength(JSON.stringify(entry)))
  })
})

describe('the next batch', () => {
  it('S7: has at most 50 entries', () => {
    const pending = Array.from({ length: 120 }, (_, index) => ({ entry: note(index + 1) }))
    const { effects } = play(screen({ pending }), { what: 'connected', last: 0 })
    expect(sent(effects)).toEqual([Array.from({ length: 50 }, (_, index) => index + 1)])
  })

  it('S7: has at most 48 KiB as it goes over the wire', () => {
    // A thousand quotes are 2,000 bytes escaped once, and 4,000 in JSON text inside JSON: twelve fit in 49,152.
    const quotes = JSON.stringify({ words: '"'.repeat(1_000) })
    const waiting = Array.from({ length: 30 }, (_, index) => note(index + 1, { body: quotes }))
    const batch = nextBatch(waiting)
    const bytes = (count: number) =>
      Buffer.byteLength(JSON.stringify({ entries: waiting.slice(0, count) }))
    expect(bytes(batch.length)).toBeLessThanOrEqual(49_152)
    expect(bytes(batch.length + 1)).toBeGreaterThan(49_152)
  })

  it('S7: is a single entry where that alone is longer', () => {
    // A document of 48 KiB, the most it may have, is over 48 KiB with its envelope.
    const long = note(1, { kind: 'adopted.1', body: 'x'.repeat(49_152) })
    expect(nextBatch([long, note(2)])).toEqual([long])
  })

  it('S7: waits for the answer to the one before', () => {
    const { effects } = play(
      connectedScreen(),
      { what: 'pressed', entry: note(1) },
      { what: 'pressed', entry: note(2) },
      { what: 'pressed', entry: note(3) },
    )
    expect(sent(effects)).toEqual([[1]])
  })
})
