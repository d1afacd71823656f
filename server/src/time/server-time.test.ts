/**
 * T1  At a start server time is the later of the machine's clock and the mark.
 * T2  Behind its mark by more than 2 s the clock is in doubt.
 * T3  Devices that come back and reckon more than 2 s differently, beyond their bounds, put it in doubt; their
 *     median is offered.
 * T4  The captain's press moves it, ends the doubt, begins an epoch, and holds over restarts.
 * T5  Steps of the machine's clock are noticed and not followed.
 * T6  A device that knows a later epoch brings it: the store was put back from an older copy.
 */
import { expect, test } from 'vitest'
import { ServerTime } from './server-time.ts'

const HOUR = 3_600_000
const NOON = Date.UTC(2030, 5, 1, 12)

/** A machine whose two clocks a test turns by hand. */
function machine(wallMs: number) {
  let wall = wallMs
  let monotonic = 5_000
  return {
    clocks: { wall: () => wall, monotonic: () => monotonic },
    pass: (ms: number) => {
      wall += ms
      monotonic += ms
    },
    step: (ms: number) => (wall += ms),
  }
}

const kept = (markMs: number, shiftMs = 0, epoch = 1) => ({ markMs, shiftMs, epoch })
const reckoned = (serverMs: number, epoch = 1, boundMs = 20) => ({ serverMs, boundMs, epoch })

test('T1 starts from the machine’s clock and goes on by monotonic time, fractions included', () => {
  const { clocks, pass } = machine(NOON)
  const time = new ServerTime(clocks, undefined)
  expect([time.now(), time.epoch, time.standing().doubt]).toEqual([NOON, 1, undefined])
  pass(1.5)
  expect(time.now()).toBe(NOON + 1.5)
  const earlier = new ServerTime(machine(NOON).clocks, kept(NOON - HOUR))
  expect([earlier.now(), earlier.standing().doubt]).toEqual([NOON, undefined])
})

test('T2 never falls below its mark, and says so where that is more than 2 s', () => {
  const near = new ServerTime(machine(NOON).clocks, kept(NOON + 2_000))
  expect([near.now(), near.standing().doubt]).toEqual([NOON + 2_000, undefined])
  const far = new ServerTime(machine(NOON).clocks, kept(NOON + 2_001))
  expect(far.now()).toBe(NOON + 2_001)
  expect(far.standing().doubt).toEqual({ why: 'behindItsMark', devices: 0 })
})

test('T3 one hour ahead: the devices that were here before say so, and their median is offered', () => {
  const time = new ServerTime(machine(NOON + HOUR).clocks, kept(NOON))
  expect(time.standing().doubt).toBeUndefined()
  expect(time.meet('a', reckoned(NOON + 5_000))).toBe(true)
  time.meet('b', reckoned(NOON + 5_040))
  time.meet('c', reckoned(NOON + 4_900))
  expect(time.standing().doubt).toEqual({
    ...{ why: 'devicesDiffer', devices: 3 },
    // The median of 4,900, 5,000 and 5,040, less the hour.
    offeredShiftMs: 5_000 - HOUR,
  })
})

test('T3 one hour back: the doubt is there at once, and the devices say by how much', () => {
  const time = new ServerTime(machine(NOON - HOUR).clocks, kept(NOON))
  time.meet('a', reckoned(NOON + 9_000))
  expect(time.standing().doubt).toEqual({
    why: 'behindItsMark',
    offeredShiftMs: 9_000,
    devices: 1,
  })
})

test('T3 what a device’s own bound explains is no doubt', () => {
  const time = new ServerTime(machine(NOON).clocks, kept(NOON))
  expect(time.meet('a', reckoned(NOON + 2_300, 1, 400))).toBe(false)
  expect(time.meet('b', reckoned(NOON + 2_450, 1, 400))).toBe(false)
  const sure = new ServerTime(machine(NOON).clocks, kept(NOON))
  expect(sure.meet('a', reckoned(NOON + 2_450, 1, 400))).toBe(true)
})

test('T3 a minority does not put it in doubt, and a doubt that the others do not share ends', () => {
  const time = new ServerTime(machine(NOON).clocks, kept(NOON))
  expect(time.meet('wrong', reckoned(NOON + HOUR))).toBe(true)
  expect(time.meet('right', reckoned(NOON + 10))).toBe(true)
  expect(time.standing().doubt).toBeUndefined()
})

test('T3 only a device’s first hello in this run counts, and only by this epoch', () => {
  const time = new ServerTime(machine(NOON).clocks, kept(NOON, 0, 4))
  expect(time.meet('fresh')).toBe(false)
  expect(time.meet('fresh', reckoned(NOON + HOUR, 4))).toBe(false)
  expect(time.meet('old', reckoned(NOON + HOUR, 3))).toBe(false)
  expect(time.standing().doubt).toBeUndefined()
})

test('T4 settling moves it, ends the doubt and begins an epoch', () => {
  const time = new ServerTime(machine(NOON + HOUR).clocks, kept(NOON))
  time.meet('a', reckoned(NOON + 1_000))
  const next = time.settled(1_000 - HOUR)
  expect(next).toEqual({ markMs: NOON + 1_000, shiftMs: 1_000 - HOUR, epoch: 2 })
  time.settle(1_000 - HOUR, next)
  expect(time.standing()).toEqual({ epoch: 2, serverMs: NOON + 1_000 })
  expect(time.kept()).toEqual(next)
})

test('T4 what was settled holds over a restart while the machine’s clock is as wrong as before', () => {
  const minute = 60_000
  const behind = new ServerTime(machine(NOON - HOUR + minute).clocks, kept(NOON, HOUR, 2))
  expect([behind.now(), behind.standing().doubt]).toEqual([NOON + minute, undefined])
  const ahead = new ServerTime(machine(NOON + HOUR + minute).clocks, kept(NOON, -HOUR, 2))
  expect([ahead.now(), ahead.standing().doubt]).toEqual([NOON + minute, undefined])
})

test('T4 a machine’s clock that was ahead and is put right between two starts counts again', () => {
  const time = new ServerTime(machine(NOON + 60_000).clocks, kept(NOON, -HOUR, 2))
  expect([time.now(), time.standing().doubt]).toEqual([NOON + 60_000, undefined])
  expect(time.kept().shiftMs).toBe(0)
})

test('T6 a later epoch becomes ours, with what its devices reckon and without what the others did', () => {
  const time = new ServerTime(machine(NOON).clocks, kept(NOON, 0, 2))
  time.meet('asleep', reckoned(NOON + HOUR, 2))
  expect(time.meet('awake', reckoned(NOON + 10, 4))).toBe(true)
  expect([time.standing().doubt, time.kept().epoch]).toEqual([undefined, 4])
  expect(time.meet('late', reckoned(NOON + HOUR, 3))).toBe(false)
  expect(time.epoch).toBe(4)
  const ahead = new ServerTime(machine(NOON + HOUR).clocks, kept(NOON, 0, 2))
  ahead.meet('awake', reckoned(NOON, 4))
  expect(ahead.standing().doubt).toEqual({
    ...{ why: 'devicesDiffer', devices: 1 },
    offeredShiftMs: -HOUR,
  })
})

test('T5 a step of the machine’s clock is noticed once and not followed', () => {
  const { clocks, pass, step } = machine(NOON)
  const time = new ServerTime(clocks, undefined)
  pass(1_000)
  expect(time.noticeStep()).toBeUndefined()
  step(-HOUR)
  pass(1_000)
  expect(time.noticeStep()).toBe(-HOUR)
  expect(time.noticeStep()).toBeUndefined()
  expect(time.now()).toBe(NOON + 2_000)
  expect(time.kept().shiftMs).toBe(0)
})

test('T5 a step that puts the machine’s clock right takes back what the captain set', () => {
  const { clocks, step } = machine(NOON - HOUR)
  const time = new ServerTime(clocks, kept(NOON - 1_000, HOUR, 2))
  expect(time.now()).toBe(NOON)
  step(HOUR)
  expect(time.noticeStep()).toBe(HOUR)
  expect([time.now(), time.kept().shiftMs]).toEqual([NOON, 0])
})
