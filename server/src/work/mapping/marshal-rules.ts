/** Rules of marshals, of who is kept from a duty, and of rest without a break. */
import type { Rule } from '@pitlamp/planner'
import { hoursOfClock, known, type RuleKind, type RuleOf } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import { DEMANDED_LAPS } from './guesses.ts'
import { pieceOf, type Mappings } from './mapping.ts'
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
  /** Off all duty, which is stricter than need be where marshalling is rest; of several nights the longest. */
  restBlock: {
    wishes: ({ id, value }, ground) => {
      const lengthMs = known(value.atLeastMs)
      const window = windowOf(value, ground)
      if (lengthMs === undefined || !window) return []
      return ground.crew.people
        .filter(({ categories = [] }) => isOf(categories, value.who))
        .map((person) => ({
          ...{ id: pieceOf(id, person.id), kind: 'blockOff', person: person.id, lengthMs },
          ...{ laps: DEMANDED_LAPS, ...window },
        }))
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

function isOf(categories: readonly string[], who: string | undefined): boolean {
  return who === undefined || categories.some((one) => one.toLowerCase() === who.toLowerCase())
}

function windowOf(value: RuleOf<'restBlock'>['value'], { timeline, regulations }: Ground) {
  const [first, last] = [timeline.segments[0], timeline.segments.at(-1)]
  if (!first || !last) return undefined
  const race = { fromAt: first.startsAt, toAt: last.endsAt ?? last.startsAt }
  if (value.from === undefined && value.to === undefined) return race
  const [from, to] = [known(value.from), known(value.to)]
  const [fromMs, toMs] = [from ?? to, to ?? from]
  const { midnightAt } = regulations
  if (midnightAt === undefined || fromMs === undefined || toMs === undefined) return undefined
  return [...hoursOfClock({ midnightAt, fromMs, toMs }, race)]
    .sort((a, b) => b.toAt - b.fromAt - (a.toAt - a.fromAt))
    .at(0)
}
