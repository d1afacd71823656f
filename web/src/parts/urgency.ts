/**
 * How pressing a countdown is. Each step is shown by a shape and a word, never by colour alone:
 * calm an outline, soon a half-filled bar, now an inverted block.
 */
import type { Obligation } from '@pitlamp/race'

export type Urgency = 'calm' | 'soon' | 'now'

/** Common practice, no source: a minute to walk to the rostrum, five to get ready. */
const REACH_MS = { soon: 300_000, now: 60_000 }
/** A stop is over in a minute; its steps are the length of a breath. */
const STOP_REACH_MS = { soon: 15_000, now: 5_000 }

/** `leftMs` may be negative: what is overdue is always now. */
export function urgencyOf(kind: Obligation['kind'], leftMs: number): Urgency {
  if (kind === 'callUnanswered') return leftMs <= 0 ? 'now' : 'soon'
  if (kind === 'readTheClock') return 'soon'
  const reach = kind === 'stopGo' ? STOP_REACH_MS : REACH_MS
  if (leftMs <= reach.now) return 'now'
  return leftMs <= reach.soon ? 'soon' : 'calm'
}

export const URGENCY_WORD = { calm: '', soon: 'Soon', now: 'Now' } as const satisfies Record<
  Urgency,
  string
>
