/** Rules of marshals, of who is kept from a duty, and of rest without a break. */
import type { Rule } from '@pitlamp/planner'
import { hoursOfClock, known, type RuleKind, type RuleOf } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import { ofWhom, type Mappings } from './mapping.ts'
import { postsWanted } from './posts.ts'

type Marshals = Extract<
  RuleKind,
  'marshalsOwed' | 'sitOutDuty' | 'marshalShift' | 'relief' | 'mayNotDo' | 'restBlock'
>

export const MARSHALS: Mappings<Marshals> = {
  marshalsOwed: {
    rules: ({ id, value }, ground) => {
      const [count, when] = [known(value.count), known(value.when)]
      if (!count || when === undefined) return []
      const segments = ground.timeline.segments.filter(
        ({ lane }) => when === 'wholeRace' || lane === 'sitOut',
      )
      return postsWanted({ id, count, segments }, ground)
    },
  },
  sitOutDuty: { rules: sitOut },
  marshalShift: {
    rules: ({ id, kind, value }) => {
      const [atMostMs, restMs] = [known(value.atMostMs), known(value.restMs)]
      if (atMostMs === undefined && restMs === undefined) return []
      return [{ id, kind, atMostMs, restMs }]
    },
  },
  relief: {
    rules: ({ id, kind, value }) => {
      const before = known(value.before)
      return before === undefined ? [] : [{ id, kind, before, byMs: known(value.byMs) }]
    },
  },
  mayNotDo: {
    rules: ({ id, value: { who, duty } }) => [{ id, kind: 'mayNot', who, duty }],
  },
  restBlock: {
    rules: ({ id, kind, value }, ground) => {
      const atLeastMs = known(value.atLeastMs)
      const windows = windowsOf(value, ground)
      if (atLeastMs === undefined || windows === 'notKnownYet') return []
      const marshallingIsRest = known(value.marshalling) === 'isRest'
      const within = windows ? { windows } : {}
      return [{ id, kind, ...ofWhom(value.who), atLeastMs, ...within, marshallingIsRest }]
    },
  },
}

function sitOut({ id, value }: RuleOf<'sitOutDuty'>, ground: Ground): readonly Rule[] {
  const sitOuts = ground.timeline.segments.filter(({ lane }) => lane === 'sitOut')
  const [duty, posts] = [known(value.obliges), known(value.posts)]
  if (duty === undefined || sitOuts.length === 0) return []
  const segments = sitOuts.map((segment) => segment.id)
  if (duty === 'rest') return [{ id, kind: 'mayNot', duty: 'post', segments }]
  return posts ? postsWanted({ id, count: posts, segments: sitOuts }, ground) : []
}

/** None where no hours are named: anywhere in the race. */
function windowsOf(value: RuleOf<'restBlock'>['value'], { timeline, regulations }: Ground) {
  if (value.from === undefined && value.to === undefined) return undefined
  const [first, last] = [timeline.segments[0], timeline.segments.at(-1)]
  const [from, to] = [known(value.from), known(value.to)]
  const [fromMs, toMs] = [from ?? to, to ?? from]
  const { midnightAt } = regulations
  if (midnightAt === undefined || fromMs === undefined || toMs === undefined) return 'notKnownYet'
  if (!first || !last) return []
  const race = { fromAt: first.startsAt, toAt: last.endsAt ?? last.startsAt }
  return hoursOfClock({ midnightAt, fromMs, toMs }, race)
}
