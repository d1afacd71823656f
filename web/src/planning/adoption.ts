/** The body of the entry that makes a document count. The hash is of its JSON text, as it stands inside. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import type { Body, DocumentName } from '@pitlamp/race'

interface Adopting {
  readonly document: DocumentName
  readonly version: number
  readonly text: string
  readonly appliesFrom: number
  readonly as: 'correction' | 'change'
}

export function adoption({ text, ...rest }: Adopting): Body<'adopted.1'> {
  const content: unknown = JSON.parse(text)
  return { ...rest, sha256: bytesToHex(sha256(utf8ToBytes(text))), content }
}
