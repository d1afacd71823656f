/** What people ask for, as the planner has it. */
import type { Wish } from '@pitlamp/planner'
import type { CrewMember, PersonWish } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import { WISH_LAPS } from './guesses.ts'

export function plannedWishes(ground: Ground): readonly Wish[] {
  return ground.crew.people.flatMap((member) => wishesOf(member, ground))
}

/** `wish/<person>/<line>`; the rest without a break has no line. */
function wishId(person: string, line: string): string {
  return `wish/${person}/${line}`
}

function wishesOf(member: CrewMember, ground: Ground): readonly Wish[] {
  const { id: person, wishList = [], restBlock } = member
  const isSomebody = (other: string) => ground.crew.people.some(({ id }) => id === other)
  const listed = wishList
    .filter((wish) => !('other' in wish) || isSomebody(wish.other))
    .map((wish) => wishFor(person, wish))
  const block = restBlock ? restWish(member, ground) : []
  return [...listed, ...block]
}

function wishFor(person: string, wish: PersonWish): Wish {
  const about = { id: wishId(person, wish.id), person, laps: WISH_LAPS }
  switch (wish.kind) {
    case 'beside':
      return { ...about, kind: 'beside', other: wish.other }
    case 'after':
    case 'before':
      return { ...about, kind: 'follows', other: wish.other, where: wish.kind }
    case 'notAtEnd':
      return { ...about, kind: 'notAtEnd', which: wish.which }
    case 'notBetween': {
      const { fromAt, toAt } = wish
      return { ...about, kind: 'notBetween', duties: ['controller'], fromAt, toAt }
    }
    case 'noMoreThan':
      return { ...about, kind: 'noMoreThan', atMostMs: wish.atMostMs }
  }
}

/** Between the instants that are named, or the first green and the end. */
function restWish({ id: person, restBlock }: CrewMember, { timeline }: Ground): readonly Wish[] {
  const [first, last] = [timeline.segments[0], timeline.segments.at(-1)]
  if (!restBlock || !first || !last) return []
  const { atLeastMs: lengthMs, fromAt = first.startsAt } = restBlock
  const toAt = restBlock.toAt ?? last.endsAt ?? last.startsAt
  const about = { id: wishId(person, 'restBlock'), person, laps: WISH_LAPS }
  return [{ ...about, kind: 'blockOff', lengthMs, fromAt, toAt }]
}
