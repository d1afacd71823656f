import { known, ruleValue } from '@pitlamp/race'
import type { Ground } from './ground.ts'

interface Limits {
  readonly atLeast?: number
  readonly atMost?: number
}

/** Limits of a race that was made shorter, where the rules cut them; while that is not known only what is at most. */
export function cutProRata({ regulations, timeline }: Ground, { atLeast, atMost }: Limits): Limits {
  const rule = ruleValue(regulations.rules, 'cutProRata')
  const { shortened } = timeline
  if (!shortened || !rule) return { atLeast, atMost }
  const isCut = known(rule.cut)
  const share = (limit: number) => (limit * shortened.toMs) / shortened.fromMs
  return {
    atLeast: atLeast !== undefined && isCut === true ? Math.ceil(share(atLeast)) : atLeast,
    atMost: atMost !== undefined && isCut !== false ? Math.floor(share(atMost)) : atMost,
  }
}
