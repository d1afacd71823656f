/** Whether a plan misses a wish, from the words of the wish. */
import type { Problem, Wish } from '@pitlamp/planner'
import { drivenMs, stintsOf, type Sheet, type Stint } from './driven.ts'

export function isMissed(wish: Wish, problem: Problem, sheet: Sheet): boolean {
  const stints = stintsOf(problem, sheet)
  const own = stints.filter(({ person }) => person === wish.person)
  switch (wish.kind) {
    case 'beside':
      return own.some((stint) => isAlone(wish.other, stint, { problem, sheet }))
    case 'follows':
      return stints.slice(1).some((after, place) => {
        const pair = [stints[place]?.person, after.person]
        const [mine, theirs] = wish.where === 'after' ? [pair[1], pair[0]] : pair
        return mine === wish.person && theirs !== wish.person && theirs !== wish.other
      })
    case 'notAtEnd':
      return stints.at(wish.which === 'first' ? 0 : -1)?.person === wish.person
    case 'notBetween':
      return busy(wish.person, problem, sheet).some(
        ({ duty, fromAt, toAt }) =>
          wish.duties.includes(duty) && fromAt < wish.toAt && toAt > wish.fromAt,
      )
    case 'noMoreThan':
      return own.reduce((sum, stint) => sum + drivenMs(problem, stint), 0) > wish.atMostMs
    case 'blockOff':
      return !hasRest(wish, busy(wish.person, problem, sheet))
  }
}

interface Of {
  readonly problem: Problem
  readonly sheet: Sheet
}

/** Somebody drives a slot in which the other one has no duty. */
function isAlone(other: string, { pieces }: Stint, { problem, sheet }: Of): boolean {
  const duties = busy(other, problem, sheet).filter(({ duty }) => duty !== 'controller')
  return pieces.some(
    (piece) => !duties.some(({ fromAt, toAt }) => fromAt <= piece.fromAt && toAt >= piece.toAt),
  )
}

/** Everything one person is on, in meeting time. Whoever comes early to a post is there from then. */
function busy(person: string, { segments }: Problem, { spans }: Sheet) {
  return spans.flatMap(({ duty, segment, fromMs, toMs, ...line }) => {
    const startsAt = segments.find(({ id }) => id === segment)?.startsAt ?? 0
    if (line.person !== person || duty === 'offDuty') return []
    return [{ duty, fromAt: startsAt + fromMs, toAt: startsAt + toMs }]
  })
}

type BlockOff = Extract<Wish, { kind: 'blockOff' }>

function hasRest({ lengthMs, ...within }: BlockOff, duties: ReturnType<typeof busy>): boolean {
  let freeAt = within.fromAt
  for (const { fromAt, toAt } of [...duties].sort((a, b) => a.fromAt - b.fromAt)) {
    if (Math.min(fromAt, within.toAt) - freeAt >= lengthMs) return true
    freeAt = Math.max(freeAt, toAt)
  }
  return within.toAt - freeAt >= lengthMs
}
