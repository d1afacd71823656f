import { durationInWords } from '../checks/in-words.ts'
import { segmentName } from '../fold/names.ts'
import type { State } from '../fold/state.ts'
import type { SegmentLane } from '../time/lanes.ts'
import type { ChangeFor } from './changes-for.ts'
import type { DutyAhead } from './duties-ahead.ts'

/** Said to the person it concerns. */
export function changeInWords(state: State, of: Omit<ChangeFor, 'sentence'>): string {
  const duty = of.after ?? of.before
  if (!duty) return ''
  const where = `${dutyWords(duty)} in ${segmentName(state, duty.span.segment)}`
  const begins = laterWords(of.laterMs)
  const away = of.awayMs > 0 ? ` You are not there for ${durationInWords(of.awayMs)} of it.` : ''
  return `${saying(of, where, begins)}${away}`
}

function saying(of: Omit<ChangeFor, 'sentence'>, where: string, begins: string): string {
  const lasts = durationInWords(of.after ? of.after.endsAt - of.after.startsAt : 0)
  const place = placeWords(of.before, of.after)
  switch (of.what) {
    case 'added':
      return `${where} is new.`
    case 'dropped':
      return `${where} is dropped.`
    case 'moved':
      return `${where} begins ${begins}${place}.`
    case 'lengthened':
    case 'shortened': {
      const now = `${where} now lasts ${lasts}`
      return begins === '' ? `${now}${place}.` : `${now} and begins ${begins}${place}.`
    }
    case 'post':
    case 'lane':
      return `${where} is${place}.`
  }
}

function dutyWords({ span }: DutyAhead): string {
  switch (span.duty) {
    case 'controller':
      return 'Your stint'
    case 'post':
      return 'Your post'
    case 'wall':
      return 'Your time at the wall'
    case 'bench':
      return 'Your time at the bench'
    case 'offDuty':
      return 'Your rest'
  }
}

/** `0:20 later`; nothing where it begins when it did. */
function laterWords(laterMs: number): string {
  const words = durationInWords(laterMs)
  if (words === '0:00') return ''
  return `${words} ${laterMs > 0 ? 'later' : 'earlier'}`
}

function placeWords(before: DutyAhead | undefined, after: DutyAhead | undefined): string {
  if (!after) return ''
  if (after.span.duty === 'post') {
    const { post } = after.span
    return post === before?.span.post || post === undefined ? '' : ` at post ${post}`
  }
  if (after.span.duty !== 'controller') return ''
  const lane = laneWords(after.lane)
  return lane === laneWords(before?.lane) ? '' : ` ${lane}`
}

function laneWords(lane: SegmentLane | undefined): string {
  if (typeof lane !== 'object') return 'on a lane not drawn yet'
  const { lane: number, track, colour } = lane
  const on = `on lane ${number}${colour === undefined ? '' : `, ${colour}`}`
  return track === undefined ? on : `${on} of track ${track}`
}
