/** Random rules of driving and rest. */
import fc from 'fast-check'
import { asked, count, marshalling, maybe, percent, rule, who, type Room } from './parts.ts'

export function drivingRules(room: Room) {
  const { raceMs, fairMs, slotMs } = room
  const perMilleOfFair = (least: number, most: number) =>
    count(room, [Math.floor(least / room.people), Math.floor(most / room.people)], [100, 500])
  return [
    rule('drivingTime', {
      atLeastMs: maybe(
        percent(room, fairMs, [
          [10, 60],
          [60, 120],
        ]),
      ),
      atMostMs: maybe(
        percent(room, fairMs, [
          [150, 300],
          [80, 130],
        ]),
      ),
    }),
    rule('drivingTime', {
      who,
      atMostMs: asked(
        percent(room, fairMs, [
          [100, 250],
          [40, 110],
        ]),
      ),
    }),
    rule('drivingShare', {
      who,
      atLeast: maybe(perMilleOfFair(100, 600)),
      atMost: maybe(count(room, [500, 900], [150, 500])),
      longerThanMs: fc.constantFrom(undefined, undefined, raceMs),
    }),
    rule('drivingSegments', {
      ...{ who, atLeast: maybe(count(room, [1, 1], [1, 2])) },
      atMost: maybe(count(room, [room.segments.length, room.segments.length + 1], [1, 2])),
    }),
    rule('equalShare', {
      of: fc.constant('time'),
      tolerance: maybe(count(room, [400, 900], [50, 400])),
      toleranceMs: maybe(
        percent(room, slotMs, [
          [100, 300],
          [50, 150],
        ]),
      ),
    }),
    rule('equalShare', {
      of: fc.constant('segments'),
      tolerance: asked(count(room, [500, 900], [0, 500])),
    }),
    rule('drivingSpread', {
      atMostMs: asked(
        percent(room, slotMs, [
          [150, 400],
          [50, 200],
        ]),
      ),
    }),
    rule('continuousDriving', {
      ...{
        who,
        atLeastMs: maybe(
          percent(room, slotMs, [
            [50, 150],
            [100, 300],
          ]),
        ),
      },
      atMostMs: maybe(
        percent(room, slotMs, [
          [200, 500],
          [100, 200],
        ]),
      ),
    }),
    rule('lapsBetweenChanges', { atLeast: asked(count(room, [1, 60], [60, 200])) }),
    rule('rollingDriving', {
      who,
      atMostMs: asked(
        percent(room, slotMs, [
          [250, 450],
          [100, 250],
        ]),
      ),
      withinMs: asked(
        percent(room, slotMs, [
          [400, 600],
          [300, 700],
        ]),
      ),
    }),
    rule('blockDriving', {
      blockMs: asked(
        percent(room, slotMs, [
          [350, 650],
          [300, 500],
        ]),
      ),
      atLeastMs: maybe(
        percent(room, slotMs, [
          [0, 40],
          [50, 150],
        ]),
      ),
      atMostMs: maybe(
        percent(room, slotMs, [
          [250, 600],
          [100, 250],
        ]),
      ),
    }),
    ...restRules(room),
    ...orderRules(room),
  ]
}

function restRules(room: Room) {
  const { slotMs } = room
  return [
    rule('driverRest', {
      ...{ who, marshalling },
      atLeastMs: maybe(
        percent(room, slotMs, [
          [20, 150],
          [100, 400],
        ]),
      ),
      shareOfStint: maybe(count(room, [100, 600], [500, 1_000])),
    }),
    rule('restBlock', {
      ...{ who, marshalling },
      atLeastMs: asked(
        percent(room, slotMs, [
          [50, 250],
          [200, 600],
        ]),
      ),
    }),
    // Midnight is at the first green.
    rule('restBlock', {
      ...{ who, marshalling },
      atLeastMs: asked(
        percent(room, slotMs, [
          [50, 150],
          [100, 200],
        ]),
      ),
      from: asked(
        percent(room, slotMs, [
          [0, 100],
          [50, 150],
        ]),
      ),
      to: asked(
        percent(room, slotMs, [
          [300, 600],
          [150, 300],
        ]),
      ),
    }),
  ]
}

function orderRules(room: Room) {
  const { people, slots } = room
  const must = asked(fc.constantFrom(...(room.isTight ? ['must', 'mustNot'] : ['mustNot'])))
  const category = fc.constantFrom('novice', 'captain')
  return [
    rule('stintsEach', {
      ...{ who, atLeast: maybe(count(room, [1, 2], [2, 3])) },
      atMost: maybe(count(room, [Math.ceil((2 * slots) / people), slots], [1, 3])),
    }),
    rule('stintsInARow', { atMost: asked(count(room, [1, 3], [1, 1])) }),
    rule('numberOfDrivers', {
      atLeast: maybe(count(room, [1, people - 1], [people - 1, people + 1])),
      atMost: maybe(count(room, [people - 1, people + 1], [1, people - 1])),
    }),
    rule('numberOfChanges', {
      of: fc.constantFrom('changes', 'stints'),
      atLeast: maybe(count(room, [1, Math.ceil(slots / 3)], [Math.ceil(slots / 2), slots + 1])),
      atMost: maybe(count(room, [slots - 1, slots + 2], [1, Math.ceil(slots / 2)])),
    }),
    rule('followingDrivers', { first: category, must, then: category }),
    rule('endDriver', {
      ...{ which: fc.constantFrom('first', 'last'), who: category },
      may: asked(fc.constantFrom('must', 'mayNot')),
    }),
    rule('mayNotDo', {
      who: fc.constant('captain'),
      duty: fc.constantFrom(...(['post', 'wall', 'bench', 'controller'] as const)),
    }),
    rule('changeWithOneself', { begins: asked(fc.boolean()) }),
    rule('cutProRata', { cut: asked(fc.boolean()) }),
    rule('countsAsDriving', { what: fc.constant('stops'), counts: asked(fc.boolean()) }),
    rule('clockPolicy', {
      ...{ clock: fc.constant('driving'), under: fc.constant('laneChange') },
      does: asked(fc.constantFrom('runs', 'holds')),
    }),
  ]
}
