import { expect, test } from 'vitest'
import { moveLabel } from '../fold/names.ts'
import type { Move } from '../entry/scalars.ts'
import type { Plan } from '../documents/plan.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, plan, smallMeeting, span } from '../testing/small-meeting.ts'
import { nextDutyOf } from './duties.ts'
import { nextHandover } from './next-handover.ts'

const { Solveig, Okello, Tamsin, Imre } = PEOPLE

function running(): Pressing {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

function called(pressing: Pressing, minute: number) {
  const state = pressing.state()
  const next = nextHandover(state, GREEN + minute * MINUTE)
  if (!next) return undefined
  const moves = next.moves.map((move) => moveLabel(state, move))
  return { minute: (next.at - GREEN) / MINUTE, moves }
}

const ORDER = ['Tamsin to post 4', 'Imre to the wall', 'Okello drives', 'Solveig off duty']

test('the next handover names every move, relief first and the relieved last', () => {
  expect(called(running(), 3)).toEqual({ minute: 10, moves: ORDER })
})

test('an overdue driver is the next handover until somebody took over', () => {
  const pressing = running()
  expect(called(pressing, 12)).toEqual({ minute: 10, moves: ORDER })
  const moves: Move[] = [{ person: Okello, duty: 'controller' }]
  pressing.press(GREEN + 13 * MINUTE, 'handover.1', { moves })
  // Nothing begins in the plan any more; what was not said of post and wall is not a handover by itself.
  expect(called(pressing, 14)).toBeUndefined()
})

test('a driver who took over early is not asked for again', () => {
  const pressing = running()
  const moves: Move[] = [
    { person: Tamsin, duty: 'post', post: '4' },
    { person: Imre, duty: 'wall' },
    { person: Okello, duty: 'controller' },
  ]
  pressing.press(GREEN + 9 * MINUTE, 'handover.1', { moves })
  expect(called(pressing, 9.5)).toBeUndefined()
  expect(nextDutyOf(pressing.state(), Okello, GREEN + 9.5 * MINUTE)).toBeUndefined()
})

test('whoever took over in place of the planned driver ends the asking', () => {
  const pressing = running()
  pressing.press(GREEN + 11 * MINUTE, 'handover.1', {
    moves: [{ person: Tamsin, duty: 'controller' }],
  })
  expect(called(pressing, 12)).toBeUndefined()
})

test('who leaves a post goes after the relief, also from post to post', () => {
  const spans: Plan['spans'] = [
    span('a', Imre, { duty: 'post', fromMs: 0, toMs: 600_000, post: '4' }),
    span('b', Imre, { duty: 'post', fromMs: 600_000, toMs: 1_200_000, post: '7' }),
    span('c', Tamsin, { duty: 'post', fromMs: 600_000, toMs: 1_200_000, post: '4' }),
  ]
  const pressing = smallMeeting({ plan: { ...plan, spans } })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  expect(called(pressing, 3)?.moves).toEqual(['Tamsin to post 4', 'Imre to post 7'])
})

test('in the break the next segment’s first driver is asked for where another holds the controller', () => {
  const spans: Plan['spans'] = [
    ...plan.spans,
    { ...span('x', Okello, { duty: 'controller', fromMs: 0, toMs: 600_000 }), segment: 'two' },
    {
      ...span('y', Solveig, { duty: 'controller', fromMs: 600_000, toMs: 1_200_000 }),
      segment: 'two',
    },
  ]
  const meeting = (atFirst: string) => {
    const pressing = smallMeeting({ plan: { ...plan, spans } })
    pressing.press(GREEN, 'green.1', { segment: 'one' })
    const moves: Move[] = [{ person: atFirst, duty: 'controller' }]
    pressing.press(GREEN + 10 * MINUTE, 'handover.1', { moves })
    pressing.press(GREEN + 20 * MINUTE, 'segmentEnd.1', { segment: 'one' })
    return pressing
  }
  // The second segment is about at 30. Solveig still holds the controller: Okello first.
  expect(called(meeting(Solveig), 25)).toMatchObject({
    ...{ minute: 30, moves: ['Okello drives', 'Solveig off duty'] },
  })
  // Okello holds it already: the next change is at 40.
  expect(called(meeting(Okello), 25)).toMatchObject({ minute: 40 })
})

test('a person’s next duty is the next one of the plan that is not served yet', () => {
  const pressing = running()
  const next = (person: string, minute: number) => {
    const duty = nextDutyOf(pressing.state(), person, GREEN + minute * MINUTE)
    return duty && [duty.span.id, (duty.startsAt - GREEN) / MINUTE, (duty.endsAt - GREEN) / MINUTE]
  }
  expect(next(Tamsin, 3)).toEqual(['m2', 10, 20])
  expect(next(Solveig, 3)).toBeUndefined()
  // Overdue: Okello should have taken over at 10.
  expect(next(Okello, 12)).toEqual(['s2', 10, 20])
})
