import { describe, expect, test } from 'vitest'
import type { Body } from '../entry/kinds/index.ts'
import type { Plan } from '../documents/plan.ts'
import { obligations } from '../obligations/obligations.ts'
import type { Rule, RuleValue } from '../rules/index.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, plan, policy, SECOND, smallMeeting } from '../testing/small-meeting.ts'
import { compulsoryRepairs } from './compulsory-repairs.ts'

type Value = Omit<RuleValue<'compulsoryRepair'>, 'what' | 'underGreen'>

function mend(value: Partial<RuleValue<'compulsoryRepair'>>): Rule {
  const all: RuleValue<'compulsoryRepair'> = { what: 'Wing', underGreen: true, ...value }
  return { id: 'wing', kind: 'compulsoryRepair', value: all, clause: '§ 3' }
}

interface Case {
  readonly rules: readonly Rule[]
  readonly stopsAt?: readonly number[]
  readonly paceMs?: number
  readonly between?: 'break' | 'laneChange'
}

/** Green at 0, the wing lost at 2:00. */
function lost({ rules, stopsAt = [], ...rest }: Case, how: Partial<Body<'faultNoted.1'>> = {}) {
  const stops: Plan['stops'] = stopsAt.map((minute) => {
    return { id: `p${minute}`, segment: 'one', atMs: minute * MINUTE, mandatory: false }
  })
  const pressing = smallMeeting({ rules, plan: { ...plan, stops }, ...rest })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const fault = pressing.press(GREEN + 2 * MINUTE, 'faultNoted.1', { fault: 'wing', ...how })
  return { pressing, fault }
}

function at(pressing: Pressing, minute: number) {
  return compulsoryRepairs(pressing.state(), GREEN + minute * MINUTE)
}

describe('which limit', () => {
  test('L37: a fault that a rule names has its limit attached, with all that the rule says', () => {
    const rule = mend({ withinMs: 300_000, elseAtStop: 'nothing', costLaps: 2 })
    const { pressing } = lost({ rules: [rule] })
    expect(at(pressing, 3)).toMatchObject([
      {
        ...{ rule: 'wing', what: 'Wing', clause: '§ 3', over: false, onlyUnderGreen: true },
        ...{ elseAtStop: 'nothing', costLaps: 2 },
        limit: {
          ...{ by: 'time', lengthMs: 300_000, remainingMs: 240_000, running: true },
          ...{ dueAt: GREEN + 7 * MINUTE, estimated: false },
        },
      },
    ])
  })

  test('nothing is said of a fault no rule names, or of one that is mended or left', () => {
    const { pressing, fault } = lost({ rules: [mend({ withinMs: 300_000 })] })
    pressing.press(GREEN + 2 * MINUTE, 'faultNoted.1', { fault: 'Wing nut' })
    expect(at(pressing, 3).map((one) => one.fault.entry)).toEqual([fault])
    pressing.press(GREEN + 3 * MINUTE, 'faultLeft.1', { fault })
    expect(at(pressing, 4)).toEqual([])
  })

  test('L37: the first time is milder, later ones have the limit', () => {
    const rule = mend({ laps: 4, firstTime: 'laneChange', causedByOthers: 'asFirst' })
    const { pressing, fault } = lost({ rules: [rule], between: 'laneChange', paceMs: 10_000 })
    // By the lane change: at the end of the segment.
    const milder = { because: 'firstTime', limit: { by: 'laneChange', dueAt: GREEN + 20 * MINUTE } }
    expect(at(pressing, 3)).toMatchObject([milder])
    pressing.press(GREEN + 4 * MINUTE, 'repairFinished.1', { fault })
    pressing.press(GREEN + 5 * MINUTE, 'faultNoted.1', { fault: 'Wing' })
    expect(at(pressing, 5)[0]?.because).toBeUndefined()
    expect(at(pressing, 5)).toMatchObject([{ limit: { by: 'laps', laps: 4 } }])
  })

  test('L37: one that others caused counts as a first where the rule says so', () => {
    const second = (causedByOthers: 'asFirst' | 'sameLimit', causedBy: 'marshal' | 'ours') => {
      const rule = mend({ laps: 4, firstTime: 'laneChange', causedByOthers })
      const { pressing, fault } = lost({ rules: [rule], between: 'laneChange' })
      pressing.press(GREEN + 4 * MINUTE, 'repairFinished.1', { fault })
      pressing.press(GREEN + 5 * MINUTE, 'faultNoted.1', { fault: 'Wing', causedBy })
      return at(pressing, 5)[0]?.because
    }
    expect(second('asFirst', 'marshal')).toBe('causedByOthers')
    expect(second('asFirst', 'ours')).toBeUndefined()
    expect(second('sameLimit', 'marshal')).toBeUndefined()
  })
})

describe('how it counts', () => {
  test('L37: in time it holds under calls where the policy says so', () => {
    const dueAt = (does: 'runs' | 'holds') => {
      const rules = [mend({ withinMs: 300_000 }), policy('repairLimit', does)]
      const { pressing } = lost({ rules })
      pressing.press(GREEN + 3 * MINUTE, 'trackCall.1', {})
      const during = at(pressing, 4)[0]?.limit?.running
      pressing.press(GREEN + 5 * MINUTE, 'powerOn.1', {})
      return [during, ((at(pressing, 6)[0]?.limit?.dueAt ?? 0) - GREEN) / MINUTE]
    }
    expect(dueAt('runs')).toEqual([true, 7])
    expect(dueAt('holds')).toEqual([false, 9])
  })

  test('L43: in laps it is shown as time at the pace of who drives, marked as an estimate', () => {
    const { pressing } = lost({ rules: [mend({ laps: 4, costLaps: 2 })], paceMs: 15_000 })
    // Four laps of 15 s are a minute.
    expect(at(pressing, 2.5)[0]?.limit).toEqual({
      ...{ by: 'laps', laps: 4, lengthMs: 60_000, remainingMs: 30_000, running: true },
      ...{ dueAt: GREEN + 3 * MINUTE, over: false, estimated: true },
    })
    // The car stands from 2:30 to 3:30: half a minute is left.
    pressing.press(GREEN + 2.5 * MINUTE, 'trackCall.1', {})
    pressing.press(GREEN + 3.5 * MINUTE, 'powerOn.1', {})
    expect(at(pressing, 3.5)[0]?.limit?.dueAt).toBe(GREEN + 4 * MINUTE)
    // A minute and a quarter beyond it: five laps at two each.
    expect(at(pressing, 5.25)[0]).toMatchObject({
      ...{ over: true, noChoice: true, limit: { remainingMs: -75_000 } },
      beyond: { laps: 5, costLaps: 10, estimated: true },
    })
  })

  test('L43: without a pace there are laps, and no time', () => {
    const { pressing } = lost({ rules: [mend({ laps: 4 })] })
    const limit = { by: 'laps', laps: 4, running: true, over: false, estimated: true }
    expect(at(pressing, 3)[0]).toMatchObject({ limit, noChoice: 'notKnown', over: false })
    expect(at(pressing, 3)[0]?.limit).toEqual(limit)
    const kinds = obligations(pressing.state(), GREEN + 3 * MINUTE).map(({ kind }) => kind)
    expect(kinds).not.toContain('repairLimit')
  })

  test('L37: by the lane change it is over once the next segment is green', () => {
    const rules = [mend({ until: 'laneChange', underGreen: false })]
    const { pressing } = lost({ rules, between: 'laneChange' })
    expect(at(pressing, 3)[0]).toMatchObject({
      ...{ over: false, noChoice: false, opportunityAt: GREEN + 20 * MINUTE },
    })
    pressing.press(GREEN + 20 * MINUTE, 'segmentEnd.1', { segment: 'one' })
    // Now, before the next green, about at 30.
    expect(at(pressing, 21)[0]).toMatchObject({
      ...{ over: false, noChoice: true, limit: { dueAt: GREEN + 30 * MINUTE } },
    })
    pressing.press(GREEN + 31 * MINUTE, 'green.1', { segment: 'two' })
    expect(at(pressing, 32)[0]).toMatchObject({
      ...{ over: true, noChoice: true, limit: { dueAt: GREEN + 31 * MINUTE } },
    })
  })

  test('L37: at once leaves no choice', () => {
    const rules = [mend({ until: 'atOnce', costLaps: 1 })]
    const { pressing } = lost({ rules, stopsAt: [3], paceMs: 10_000 })
    expect(at(pressing, 2)[0]).toMatchObject({
      ...{ over: true, noChoice: true, limit: { by: 'atOnce', dueAt: GREEN + 2 * MINUTE } },
    })
    // In at 2:30: three laps of 10 s were run since.
    pressing.press(GREEN + 2.5 * MINUTE, 'stopIn.1', { moment: 'stopped' })
    expect(at(pressing, 4)[0]?.beyond).toEqual({ laps: 3, costLaps: 3, estimated: true })
  })

  test('of several limits the soonest counts', () => {
    const rules = [mend({ withinMs: 300_000, laps: 4 })]
    const { pressing } = lost({ rules, paceMs: 15_000 })
    expect(at(pressing, 2)[0]?.limits.map(({ by }) => by)).toEqual(['laps', 'time'])
  })
})

describe('whether a choice is left', () => {
  const noChoice = (rest: Omit<Case, 'rules'>, value: Value, minute = 3) =>
    at(lost({ rules: [mend(value)], ...rest }).pressing, minute)[0]?.noChoice

  test('the limit ends before the next planned stop, or after it', () => {
    expect(noChoice({ stopsAt: [6] }, { withinMs: 300_000 })).toBe(false)
    expect(noChoice({ stopsAt: [8] }, { withinMs: 300_000 })).toBe(true)
    expect(noChoice({}, { withinMs: 300_000 })).toBe(true)
  })

  test('a lane change is one too, unless it must be mended under green', () => {
    const rest = { between: 'laneChange' } as const
    const inTwenty = { withinMs: 1_200_000 }
    expect(noChoice(rest, { ...inTwenty, ...{ underGreen: false } })).toBe(false)
    expect(noChoice(rest, inTwenty)).toBe(true)
  })

  test('while the rule’s limit is not known it cannot be told', () => {
    expect(noChoice({}, { laps: 'notKnownYet' })).toBe('notKnown')
  })
})

test('it falls due with a wick, concerning who drives', () => {
  const { pressing, fault } = lost({ rules: [mend({ laps: 4 })], paceMs: 15_000 })
  const due = obligations(pressing.state(), GREEN + 2.5 * MINUTE).find(
    ({ kind }) => kind === 'repairLimit',
  )
  expect(due).toEqual({
    ...{ id: `repairLimit:${fault}`, kind: 'repairLimit', dueAt: GREEN + 180 * SECOND },
    ...{ held: false, lengthMs: 60_000, estimated: true, concerns: [PEOPLE.Solveig] },
    label: 'wing must be mended',
  })
})
