/**
 * Every kind of rule, worked out by hand: four quarters of an hour, of which Ada drives 100 laps each (9 s) and Ben 90
 * (10 s). Left alone, Ada drives all: 400.
 */
import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import { plan } from '../plan.ts'
import type { Problem } from '../problem/problem.ts'
import { driver, minutes, problem, segment } from '../testing/make.ts'
import type { Rule } from './index.ts'

const solver = await loadHighs()
const ada = driver('ada', { lapMs: 9_000, categories: ['quick'] })
const ben = driver('ben', { categories: ['steady'] })
/** 75 laps a quarter. */
const cyd = driver('cyd', { lapMs: 12_000, categories: ['new'] })

function worth(rules: readonly Rule[], of: Partial<Problem> = {}): number | string {
  const named = rules.map((rule, place) => ({ ...rule, id: `rule-${place}` }))
  const answer = plan(problem({ people: [ada, ben], rules: named, ...of }), { solver })
  return answer.kind === 'planned' ? Math.round(answer.worthLaps * 100) / 100 : answer.kind
}

type Case = readonly [string, readonly Rule[], number | string, Partial<Problem>?]

const id = ''
const both: Rule = { id, kind: 'numberOfDrivers', atLeast: 2 }
const quarter: Rule = { id, kind: 'continuousDriving', atMostMs: minutes(15) }
const post: Rule = { id, kind: 'dutyWanted', duty: 'post', count: 1 }
const shift: Rule = { id, kind: 'marshalShift', atMostMs: minutes(30) }
const withOneself = { stops: true, laneChanges: false, changeWithOneself: true }
const halves = [
  segment(2, 15),
  segment(2, 15, { id: 'two', after: 'laneChange', startsAt: 1_000_000_000 + minutes(35) }),
]

describe('driving', () => {
  const cases: readonly Case[] = [
    ['time at most: two quarters each', [{ id, kind: 'drivingTime', atMostMs: minutes(30) }], 380],
    [
      'time at least: owed only by who drives',
      [{ id, kind: 'drivingTime', atLeastMs: minutes(30) }],
      400,
    ],
    ['time at least, both drive', [{ id, kind: 'drivingTime', atLeastMs: minutes(30) }, both], 380],
    ['share: three quarters and one', [{ id, kind: 'drivingShare', atMost: 750 }], 390],
    [
      'share: not in a race as short',
      [{ id, kind: 'drivingShare', atMost: 750, longerThanMs: minutes(60) }],
      400,
    ],
    ['one segment each', [{ id, kind: 'drivingSegments', atMost: 1 }], 380, { segments: halves }],
    ['equal to the minute', [{ id, kind: 'equalShare', of: 'time' }, both], 380],
    [
      'equal within a quarter',
      [{ id, kind: 'equalShare', of: 'time', toleranceMs: minutes(15) }, both],
      390,
    ],
    [
      'equal segments',
      [{ id, kind: 'equalShare', of: 'segments' }, both],
      380,
      { segments: halves },
    ],
    ['no spread', [{ id, kind: 'drivingSpread', atMostMs: 0 }, both], 380],
    [
      'no spread, and one alone over a lane change that counts',
      [{ id, kind: 'drivingSpread', atMostMs: 0 }],
      400,
      { segments: halves, counting: { ...withOneself, laneChanges: true } },
    ],
    ['a spread of two quarters', [{ id, kind: 'drivingSpread', atMostMs: minutes(30) }, both], 390],
    ['a quarter at a time', [quarter], 380],
    ['a quarter at a time, oneself again', [quarter], 400, { counting: withOneself }],
    [
      'two in a row',
      [quarter, { id, kind: 'stintsInARow', atMost: 2 }],
      390,
      { counting: withOneself },
    ],
    [
      'one in a row',
      [quarter, { id, kind: 'stintsInARow', atMost: 1 }],
      380,
      { counting: withOneself },
    ],
    ['one stint each of a quarter', [quarter, { id, kind: 'stintsEach', atMost: 1 }], 'impossible'],
    ['two stints each of a quarter', [quarter, { id, kind: 'stintsEach', atMost: 2 }], 380],
    ['three changes', [{ id, kind: 'numberOfChanges', of: 'changes', atLeast: 3 }], 380],
    ['one stint', [{ id, kind: 'numberOfChanges', of: 'stints', atMost: 1 }, both], 'impossible'],
    [
      'somebody steady first',
      [{ id, kind: 'endDriver', which: 'first', who: 'Steady', must: true }],
      390,
    ],
    [
      'nobody quick last',
      [{ id, kind: 'endDriver', which: 'last', who: 'quick', must: false }],
      390,
    ],
    [
      'half an hour in any hour',
      [{ id, kind: 'rollingDriving', atMostMs: minutes(30), withinMs: minutes(60) }],
      380,
    ],
    [
      'a quarter in each half hour',
      [{ id, kind: 'blockDriving', blockMs: minutes(30), atMostMs: minutes(15) }],
      380,
    ],
    [
      'a quarter, then twice its rest',
      [quarter, { id, kind: 'driverRest', shareOfStint: 1_000, marshallingIsRest: true }],
      380,
    ],
    [
      'too much rest for two',
      [quarter, { id, kind: 'driverRest', atLeastMs: minutes(30), marshallingIsRest: true }],
      'impossible',
    ],
    ['not Ada', [{ id, kind: 'mayNot', person: 'ada', duty: 'controller' }], 360],
    // Ben, Ada, Cyd, Ada: 90 + 100 + 75 + 100.
    [
      'nobody steady after the quick',
      [quarter, { id, kind: 'followingDrivers', first: 'quick', must: false, then: 'steady' }],
      365,
      { people: [ada, ben, cyd] },
    ],
  ]
  for (const [name, rules, laps, of] of cases) {
    it(name, () => expect(worth(rules, of)).toBe(laps))
  }
})

describe('posts', () => {
  const cut = [segment(4, 15, { stops: [], cutsMs: [minutes(15), minutes(30), minutes(45)] })]
  const cases: readonly Case[] = [
    ['the other one marshals', [post], 400],
    ['nobody does both', [post], 'impossible', { people: [ada] }],
    [
      'both at once where that goes together',
      [post],
      400,
      { people: [ada], joined: [['controller', 'post']] },
    ],
    // Ben marshals twice, Ada once while Ben drives, Ben again.
    ['half an hour at the post', [post, shift], 390],
    ['they cannot swap while the car runs', [post, shift], 'impossible', { segments: cut }],
    [
      'the old driver down first',
      [post, shift, { id, kind: 'driverChange', where: 'anywhere', order: 'downFirst' }],
      390,
      { segments: cut },
    ],
    [
      'a post that may be empty for a moment',
      [post, shift, { id, kind: 'relief', before: false }],
      390,
      { segments: cut },
    ],
    [
      'a relief who comes early cannot drive until then',
      [post, shift, { id, kind: 'relief', before: true, byMs: minutes(5) }],
      'impossible',
    ],
    // Each of three: drives, marshals, is free; the relief is the free one. Ada twice, Ben and Cyd once at most.
    [
      'with a third the relief comes early',
      [post, shift, { id, kind: 'relief', before: true, byMs: minutes(5) }],
      400,
      { people: [ada, ben, cyd] },
    ],
  ]
  for (const [name, rules, laps, of] of cases) {
    it(name, () => expect(worth(rules, of)).toBe(laps))
  }
})

describe('stops', () => {
  /** Stops may be at 15, 30 and 45 min, each costs Ada 10 laps of 9 s. */
  const chosen = {
    segments: [segment(4, 15, { stops: [], gridMs: minutes(15) })],
    people: [ada],
    stop: { standsMs: 0, costsMs: 90_000 },
  }
  const window = (fromMs: number, toMs: number) => ({
    segment: 'one',
    fromMs: minutes(fromMs),
    toMs: minutes(toMs),
  })
  const stops = (count: number): Rule => ({ id, kind: 'mandatoryStops', count, per: 'race' })
  const cases: readonly Case[] = [
    ['none without need', [], 400],
    ['two stops', [stops(2)], 380],
    ['one in its window', [{ id, kind: 'stopWindows', windows: [window(25, 35)] }], 390],
    [
      'one in each of two windows that share a moment',
      [{ id, kind: 'stopWindows', windows: [window(10, 30), window(30, 40)] }],
      380,
    ],
    [
      'no moment in the window',
      [{ id, kind: 'stopWindows', windows: [window(31, 44)] }],
      'impossible',
    ],
    [
      'one outside the closed periods',
      [
        stops(1),
        { id, kind: 'closedPeriod', of: 'segment', firstMs: minutes(20), lastMs: minutes(20) },
      ],
      390,
    ],
    [
      'no room for two',
      [
        stops(2),
        { id, kind: 'closedPeriod', of: 'race', firstMs: minutes(20), lastMs: minutes(20) },
      ],
      'impossible',
    ],
    [
      'one about each half hour',
      [{ id, kind: 'stopRhythm', everyMs: minutes(30), toleranceMs: minutes(5) }],
      390,
    ],
    [
      'half an hour between two',
      [stops(2), { id, kind: 'runningBetweenStops', atLeastMs: minutes(30) }],
      380,
    ],
    [
      'half an hour between three',
      [stops(3), { id, kind: 'runningBetweenStops', atLeastMs: minutes(30) }],
      'impossible',
    ],
    ['half an hour on one load', [{ id, kind: 'energy', fullMs: minutes(30) }], 390],
    [
      'half a load left at the end',
      [{ id, kind: 'energy', fullMs: minutes(30), leftAtEnd: 500 }],
      380,
    ],
    // 200 laps at 9 s are 30 min.
    ['two hundred laps on one load', [{ id, kind: 'energy', fullLaps: 200 }], 390],
    ['a task at two stops', [{ id, kind: 'stopTask', task: 'motor', times: 2 }], 380],
    // Drivers change at 30 min: 200, and 2 × 90 less a stop of 9 laps.
    [
      'changes are stops',
      [{ id, kind: 'drivingTime', atMostMs: minutes(30) }],
      371,
      { people: [ada, ben] },
    ],
    ['a change at every stop', [stops(3), { id, kind: 'changeAtStop' }], 'impossible'],
    [
      'changes at stops only',
      [
        { id, kind: 'drivingTime', atMostMs: minutes(30) },
        { id, kind: 'driverChange', where: 'stoppedInPitLane', order: 'anyOrder' },
      ],
      'impossible',
      { people: [ada, ben], segments: [segment(4, 15, { stops: [], cutsMs: [minutes(30)] })] },
    ],
  ]
  for (const [name, rules, laps, of] of cases) {
    it(name, () => expect(worth(rules, { ...chosen, ...of })).toBe(laps))
  }
})
