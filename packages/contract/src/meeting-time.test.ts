import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { meetingTime, serverTime } from './meeting-time.ts'

const real = { anchorServerMs: 5_000, anchorMeetingMs: 5_000, rate: 1 }
const fictional = { anchorServerMs: 1_000_000, anchorMeetingMs: 7_000_000, rate: 20 }

describe('the meeting clock', () => {
  it('shows server time in a meeting that is not fictional', () => {
    expect(meetingTime(real, 123_456.4)).toBe(123_456)
  })

  it('runs at its rate from its anchor, forwards and backwards', () => {
    // 7,000,000 + (1,000,250 − 1,000,000) × 20 = 7,005,000
    expect(meetingTime(fictional, 1_000_250)).toBe(7_005_000)
    // 7,000,000 + (999,990 − 1,000,000) × 20 = 6,999,800
    expect(meetingTime(fictional, 999_990)).toBe(6_999_800)
  })

  it('gives whole milliseconds', () => {
    // 7,000,000 + 0.13 × 20 = 7,000,002.6
    expect(meetingTime(fictional, 1_000_000.13)).toBe(7_000_003)
  })

  it('says at which server time the meeting’s clock will show a time', () => {
    // 1,000,000 + (7,005,010 − 7,000,000) / 20 = 1,000,250.5
    expect(serverTime(fictional, 7_005_010)).toBe(1_000_250.5)
  })

  it('maps every whole meeting time to server time and back', () => {
    const times = fc.integer({ min: 1, max: 4_000_000_000_000 })
    const clocks = fc.record({
      anchorServerMs: times,
      anchorMeetingMs: times,
      rate: fc.integer({ min: 1, max: 120 }),
    })
    fc.assert(
      fc.property(clocks, times, (clock, at) => {
        expect(meetingTime(clock, serverTime(clock, at))).toBe(at)
      }),
    )
  })
})
