import { isOf } from '../grid/grid.ts'
import { addRestFromPosts } from '../rotation/rest-from-posts.ts'
import { addRest } from '../rotation/rest.ts'
import type { RuleKind } from './rule-kind.ts'
import { shareUp } from './shares.ts'

/**
 * From the end of a stint to the same driver's next, in meeting time; at least so long, and at least so many
 * thousandths of what the stint drove. Where marshalling is no rest, in one piece without a post.
 */
export interface DriverRest {
  readonly id: string
  readonly kind: 'driverRest'
  readonly who?: string
  readonly atLeastMs?: number
  readonly shareOfStint?: number
  readonly marshallingIsRest: boolean
}

export const driverRest: RuleKind<DriverRest> = {
  rows: (rule, rotation) => {
    const { id: tag, who, atLeastMs = 0, shareOfStint = 0, marshallingIsRest } = rule
    const owedMs = ({ drivenMs }: { drivenMs: number }) =>
      Math.max(atLeastMs, shareUp(drivenMs, shareOfStint))
    const hasPosts = rotation.places.some(({ duty }) => duty === 'post')
    const add = hasPosts && !marshallingIsRest ? addRestFromPosts : addRest
    for (const { id } of rotation.grid.drivers.filter((one) => isOf(one, who))) {
      add(rotation, id, { tag, owedMs })
    }
  },
}
