/** Random rules of stops, and of marshals. */
import fc from 'fast-check'
import { asked, between, count, maybe, percent, rule, type Room } from './parts.ts'

export function stopRules(room: Room) {
  const { slotMs, slots, segments } = room
  const each = Math.min(...segments)
  return [
    rule('runningBetweenStops', {
      atLeastMs: asked(
        percent(room, slotMs, [
          [20, 90],
          [90, 250],
        ]),
      ),
    }),
    rule('changeAtStop', { changes: asked(fc.boolean()) }),
    rule('stopMinimum', {
      minimumMs: asked(fc.constantFrom(45_000, 60_000)),
      ...{ from: fc.constant('stopped'), to: fc.constant('leaving') },
    }),
    rule('mandatoryStops', {
      count: asked(count(room, [1, Math.max(1, each - 1)], [each - 1, slots])),
      per: fc.constantFrom(...(room.isTight ? ['segment', 'race'] : ['race'])),
    }),
    stopWindows(room),
    rule('stopRhythm', {
      everyMs: asked(
        percent(room, slotMs, [
          [200, 300],
          [100, 300],
        ]),
      ),
      toleranceMs: asked(
        percent(room, slotMs, [
          [90, 140],
          [0, 100],
        ]),
      ),
    }),
    rule('closedPeriod', {
      of: fc.constantFrom('segment', 'race'),
      firstMs: maybe(
        percent(room, slotMs, [
          [20, 100],
          [100, 300],
        ]),
      ),
      lastMs: maybe(
        percent(room, slotMs, [
          [20, 100],
          [100, 300],
        ]),
      ),
    }),
    rule('stopTask', {
      task: fc.constantFrom('motor', 'tyres'),
      times: asked(count(room, [1, 2], [2, 4])),
      segments: fc.option(fc.constant(['s1']), { nil: undefined, freq: 3 }),
    }),
    rule('driverChange', {
      where: asked(fc.constantFrom('stoppedInPitLane', 'anywhere')),
      order: asked(fc.constantFrom('downFirst', 'anyOrder')),
    }),
    rule('energy', {
      fullMs: maybe(
        percent(room, slotMs, [
          [200, 400],
          [100, 200],
        ]),
      ),
      fullLaps: maybe(
        percent(room, slotMs, [
          [300, 600],
          [100, 300],
        ]).map((ms) => Math.ceil(ms / 10_000)),
      ),
      leftAtEnd: maybe(count(room, [0, 200], [100, 500])),
      atEmpty: fc.constant('stands'),
    }),
  ]
}

/** From a slot's beginning to another's, both ends included, in one segment or two. */
function stopWindows({ segments, slotMs, isTight }: Room) {
  const window = fc
    .record({
      place: between(0, segments.length - 1),
      from: between(0, 3),
      slots: between(isTight ? 0 : 1, 3),
    })
    .map(({ place, from, slots }) => ({
      segment: `s${place + 1}`,
      fromMs: from * slotMs,
      toMs: (from + slots) * slotMs,
    }))
  const windows = fc
    .array(window, { minLength: 1, maxLength: 2 })
    .map((all) => all.map((one, place) => ({ id: `w${place + 1}`, ...one })))
  return rule('stopWindows', { windows: asked(windows) })
}

export function marshalRules(room: Room) {
  const { slotMs, isTight } = room
  return [
    rule('marshalsOwed', {
      count: asked(between(1, isTight ? 2 : 1)),
      when: asked(fc.constantFrom('wholeRace', 'sitOuts')),
    }),
    rule('sitOutDuty', {
      obliges: asked(fc.constantFrom('marshalAllPosts', 'marshalSomePosts', 'rest')),
      posts: maybe(between(1, 2)),
    }),
    rule('postByLane', { tied: asked(fc.boolean()) }),
    rule('marshalWhileDriving', { allowed: asked(fc.boolean()) }),
    rule('marshalShift', {
      atMostMs: maybe(
        percent(room, slotMs, [
          [200, 500],
          [100, 200],
        ]),
      ),
      restMs: maybe(
        percent(room, slotMs, [
          [20, 100],
          [100, 300],
        ]),
      ),
    }),
    rule('relief', { before: asked(fc.boolean()), byMs: maybe(fc.constantFrom(0, 60_000)) }),
  ]
}
