/** Secrets: what they are made of, and the only form in which they are kept. */
import { createHash, randomBytes, randomInt } from 'node:crypto'

/** Without 0 O, 1 I L, 2 Z, 5 S, 8 B, U V: read aloud in a noisy hall, typed with a cold thumb. */
const UNAMBIGUOUS = '34679ACDEFGHJKMNPQRTWXY'
const TYPED_CHARACTERS = 8

/** What a device proves itself with: 256 bits. */
export function newToken(): string {
  return randomBytes(32).toString('base64url')
}

/** A code in a link or a QR: 128 bits. */
export function newLinkCode(): string {
  return randomBytes(16).toString('base64url')
}

/** A code somebody reads and types: 23⁸ ≈ 7.8 × 10¹⁰, once, for ten minutes, five tries an address. */
export function newTypedCode(): string {
  return Array.from(
    { length: TYPED_CHARACTERS },
    () => UNAMBIGUOUS[randomInt(UNAMBIGUOUS.length)],
  ).join('')
}

/** As it was meant: capitals, no spaces or hyphens, where it can be a typed code; link codes as they are. */
export function asMeant(code: string): string {
  const bare = code.replaceAll(/[\s-]/g, '')
  return bare.length === TYPED_CHARACTERS ? bare.toUpperCase() : code.trim()
}

export function isTyped(code: string): boolean {
  return asMeant(code).length === TYPED_CHARACTERS
}

/** SHA-256, hex. Secrets of this length need no salt; typed codes are worthless after ten minutes. */
export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex')
}
