import { SENTENCES, type Rule } from '@pitlamp/race'

/** A rule as people point at it: its clause where it has one, else what it is about. */
export function ruleLabel({ kind, clause }: Rule): string {
  return clause ?? SENTENCES[kind].called.toLowerCase()
}
