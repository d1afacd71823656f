/** What lanes make of a plan: nobody drives in a sit-out, and posts that are tied to the lane are its posts. */
import type { Plan, PlanSpan } from '../documents/plan.ts'
import type { Regulations } from '../documents/rules.ts'
import { ruleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { SegmentLane } from './lanes.ts'

type Lanes = ReadonlyMap<string, SegmentLane>

/**
 * Where the rules tie our post to our lane, a post without a name or called by a number is that of the lane, unless
 * two people stand at different posts at once. The plan itself where nothing changes.
 */
export function onLanes(plan: Plan, regulations: Regulations | undefined, lanes: Lanes): Plan {
  if (lanes.size === 0) return plan
  const isSatOut = ({ segment }: { readonly segment: string }) => lanes.get(segment) === 'sitOut'
  const tied = known(ruleValue(regulations?.rules ?? [], 'postByLane')?.tied) === true
  const posts = plan.spans.filter(({ duty }) => duty === 'post')
  const spans = plan.spans
    .filter((span) => span.duty !== 'controller' || !isSatOut(span))
    .map((span) => (tied && span.duty === 'post' ? atPostOfLane(span, posts, lanes) : span))
  const stops = plan.stops.filter((stop) => !isSatOut(stop))
  const isSame = spans.length === plan.spans.length && stops.length === plan.stops.length
  if (isSame && spans.every((span, place) => span === plan.spans[place])) return plan
  return { ...plan, spans, stops }
}

function atPostOfLane(span: PlanSpan, posts: readonly PlanSpan[], lanes: Lanes): PlanSpan {
  const lane = lanes.get(span.segment)
  if (typeof lane !== 'object') return span
  const post = String(lane.lane)
  if (span.post === post || !isNumbered(span)) return span
  return posts.some((other) => isElsewhereMeanwhile(other, span)) ? span : { ...span, post }
}

function isNumbered({ post }: PlanSpan): boolean {
  return post === undefined || /^\s*\d+\s*$/.test(post)
}

function isElsewhereMeanwhile(other: PlanSpan, span: PlanSpan): boolean {
  if (other.segment !== span.segment || other.person === span.person) return false
  if (other.post === span.post) return false
  return other.fromMs < span.toMs && span.fromMs < other.toMs
}
