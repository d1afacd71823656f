/** A meeting has a clock of its own: entries and deadlines are in meeting time, the server's clock drives it. */
import type { MeetingClock } from './http/meeting.ts'

/**
 * Meeting time in whole ms at a moment of server time (ms, fractions allowed):
 * anchorMeetingMs + (server − anchorServerMs) × rate. Before the anchor it runs back just the same.
 */
export function meetingTime(clock: MeetingClock, serverMs: number): number {
  return Math.round(clock.anchorMeetingMs + (serverMs - clock.anchorServerMs) * clock.rate)
}

/** Server time, not rounded, at which the meeting's clock shows `meetingMs`. The rate must not be 0. */
export function serverTime(clock: MeetingClock, meetingMs: number): number {
  return clock.anchorServerMs + (meetingMs - clock.anchorMeetingMs) / clock.rate
}
