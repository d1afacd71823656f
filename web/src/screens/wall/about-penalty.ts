/** What a press says of a penalty that is not over. */
import type { ToRecord } from './to-record.ts'

const WRONG = 'We think this penalty is wrong'

export function aboutPenalty(entry: string, press: 'served' | 'withdrawn' | 'wrong'): ToRecord {
  switch (press) {
    case 'served':
      return { kind: 'penaltyServed.1', body: { penalty: entry }, word: 'Penalty served' }
    case 'withdrawn':
      return { kind: 'penaltyWithdrawn.1', body: { penalty: entry }, word: 'Penalty withdrawn' }
    case 'wrong':
      return { kind: 'note.1', body: { words: WRONG, about: entry }, word: 'Note' }
  }
}
