/** What is pressed in a schedule: ordinary entries, and each kind of trouble an entry can be. */
import type { Entry } from '@pitlamp/race'

export type PressKind = 'note' | 'longNote' | 'trackCall' | 'correction' | 'tooLong' | 'malformed'

interface Press {
  readonly device: string
  readonly n: number
  readonly at: number
  readonly kind: PressKind
  /** What a correction aims at. */
  readonly target: string
}

export function entryOf({ device, n, at, kind, target }: Press): Entry {
  const id = `${device.slice(0, 9)}${device.slice(-4)}-7000-8000-${String(n).padStart(12, '0')}`
  const envelope = { v: 1, id, device, n, at, atBoundMs: 1, epoch: 1 } as const
  switch (kind) {
    case 'note':
      return { ...envelope, kind: 'note.1', body: note(`${device} ${String(n)}`) }
    case 'longNote':
      // Quotes are escaped twice on the wire: a handful of these fill a batch.
      return { ...envelope, kind: 'note.1', body: note('"'.repeat(1_900)) }
    case 'trackCall':
      // The crew may not record it.
      return { ...envelope, kind: 'trackCall.1', body: '{}' }
    case 'correction':
      return { ...envelope, kind: 'correction.1', body: correction(target) }
    case 'tooLong':
      return { ...envelope, kind: 'note.1', body: note('x'.repeat(9_000)) }
    case 'malformed':
      return { ...envelope, kind: 'note.1', body: '{"words":7}' }
  }
}

function note(words: string): string {
  return JSON.stringify({ words })
}

function correction(target: string): string {
  return JSON.stringify({ target, basedOn: target, change: { what: 'void' }, reason: '' })
}
