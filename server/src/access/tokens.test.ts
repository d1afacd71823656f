import { expect, test } from 'vitest'
import { asMeant, hashOf, isTyped, newLinkCode, newToken, newTypedCode } from './tokens.ts'

test('tokens have 256 bits, link codes 128, and no two are the same', () => {
  expect(Buffer.from(newToken(), 'base64url')).toHaveLength(32)
  expect(Buffer.from(newLinkCode(), 'base64url')).toHaveLength(16)
  expect(newToken()).not.toBe(newToken())
})

test('a typed code has eight characters that are not mistaken for each other', () => {
  const codes = Array.from({ length: 200 }, newTypedCode)
  for (const code of codes) expect(code).toMatch(/^[34679ACDEFGHJKMNPQRTWXY]{8}$/)
  expect(new Set(codes).size).toBe(200)
})

test('a typed code is read as it was meant; a link code is left alone', () => {
  expect(asMeant(' acde-fghj ')).toBe('ACDEFGHJ')
  const link = 'ab-de_ghijklmnopqrstuv'
  expect([asMeant(link), isTyped(link), isTyped('acde fghj')]).toEqual([link, false, true])
})

test('a secret is kept as its SHA-256', () => {
  // FIPS 180-2, appendix B.1: SHA-256 of "abc".
  expect(hashOf('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
})
