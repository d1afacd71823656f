/**
 * One lamp a screen: of everything that could ask for a look, the most urgent thing has it. Nothing has it
 * while all is calm and nothing waits for a hand.
 */
import type { Urgency } from './urgency.ts'

export interface LampClaim {
  readonly part: string
  readonly urgency: Urgency
  readonly dueAt: number
  /** It waits for somebody although no clock runs out on it: an open fault nobody works on. */
  readonly waiting?: boolean
}

const RANK = { now: 3, soon: 2, calm: 0 } as const satisfies Record<Urgency, number>

/** Of two equally urgent claims the one due first; of two due at once the one named first. */
export function lampOf(claims: readonly LampClaim[]): string | undefined {
  let best: LampClaim | undefined
  for (const claim of claims) {
    if (rank(claim) > 0 && (best === undefined || before(claim, best))) best = claim
  }
  return best?.part
}

function before(a: LampClaim, b: LampClaim): boolean {
  return rank(a) > rank(b) || (rank(a) === rank(b) && a.dueAt < b.dueAt)
}

function rank({ urgency, waiting }: LampClaim): number {
  return Math.max(RANK[urgency], waiting === true ? 1 : 0)
}
