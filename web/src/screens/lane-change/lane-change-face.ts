/** A lane change in words: from where to where, who does what in which order, until when. */
import { counted, type LaneChange, type MoveStep, type SegmentLane } from '@pitlamp/race'
import { handsWords } from '../../parts/hands.ts'
import { moveWords } from '../../parts/moves.ts'
import type { CountdownShown } from '../../parts/shown.ts'
import { clockTime, countdown, figure } from '../../parts/time.ts'
import { urgencyOf } from '../../parts/urgency.ts'

export interface Telling {
  readonly now: number
  readonly timeZone: string
  readonly nameOf: (person: string) => string
  /** Who holds this device. */
  readonly person?: string
}

/** `Lane change, 8 of 24` */
export function titleOf({ kind, before }: LaneChange): string {
  const which = `${before.index + 1} of ${before.of}`
  return kind === 'laneChange' ? `Lane change, ${which}` : `Break after segment ${which}`
}

export interface LaneShown {
  /** `3`; `out` for a sit-out, `?` while it is not drawn. */
  readonly big: string
  /** `blue`, `track 2, blue`, `sit-out`, `not drawn yet`; empty where the number says it all. */
  readonly words: string
  readonly colour?: string
}

export function laneShown(lane: SegmentLane | undefined): LaneShown {
  if (lane === undefined || lane === 'notDrawnYet') return { big: '?', words: 'not drawn yet' }
  if (lane === 'sitOut') return { big: '–', words: 'sit-out' }
  const { lane: number, track, colour } = lane
  const words = [...(track === undefined ? [] : [`track ${track}`]), ...(colour ? [colour] : [])]
  return { big: String(number), words: words.join(', '), ...(colour ? { colour } : {}) }
}

/** Read aloud in place of the two figures. */
export function wayWords({ from, to }: LaneChange): string {
  return `From lane ${spoken(from)} to ${to === 'sitOut' ? 'a sit-out' : `lane ${spoken(to)}`}`
}

function spoken(lane: SegmentLane | undefined): string {
  const { big, words } = laneShown(lane)
  return words === '' ? big : `${big} (${words})`
}

/** `Okello drives. Tamsin to post 5.`; to whoever holds the phone as an order. */
export function whoWords(change: LaneChange, { nameOf, person }: Telling): string {
  const { driver, posts, to, sitOut } = change
  const out = to === 'sitOut' ? [sitOutWords(sitOut)] : []
  const drives =
    driver === undefined ? [] : [person === driver ? 'You drive' : `${nameOf(driver)} drives`]
  const own = posts.filter((post) => post.person === person)
  const told = own.length > 0 && person !== undefined ? own : posts
  const where = told.map(({ person: who, post }) => {
    const name = who === person ? 'You' : nameOf(who)
    if (post === undefined) return who === person ? 'You marshal' : `${name} marshals`
    return `${name} to post ${post}`
  })
  const all = [...out, ...drives, ...where]
  return all.length === 0 ? 'No plan says who drives.' : `${all.join('. ')}.`
}

const OBLIGES = {
  marshalAllPosts: 'We marshal all posts',
  marshalSomePosts: 'We marshal',
  rest: 'We rest',
} as const

function sitOutWords(sitOut: LaneChange['sitOut']): string {
  if (!sitOut) return 'We sit out'
  const { obliges, posts } = sitOut
  if (obliges === 'notKnownYet') return 'We sit out; what that obliges us to is not known'
  const many = posts === undefined || obliges === 'rest' ? '' : `, ${counted(posts, 'post')}`
  return `${OBLIGES[obliges]}${many}`
}

const MOVED_BY = {
  us: 'We move the car.',
  judges: 'The judges move the car.',
  notKnown: 'Ask who moves the car.',
} as const satisfies Record<LaneChange['movedBy'], string>

const RESTART_AT = {
  sameSection: 'It starts in the track section where it stopped.',
  straightAcross: 'It starts straight across from where it stopped.',
  startLine: 'It starts from the line.',
  notKnown: 'Ask where it starts again.',
} as const satisfies Record<NonNullable<LaneChange['restartAt']>, string>

/** Who moves the car and where it starts; nothing of it before a sit-out. */
export function carWords({ movedBy, restartAt, to }: LaneChange): string {
  if (to === 'sitOut') return 'The car leaves the track.'
  const starts = restartAt === undefined ? [] : [RESTART_AT[restartAt]]
  return [MOVED_BY[movedBy], ...starts].join(' ')
}

export function handsShown({ hands }: LaneChange): string {
  const clause = hands.clause === undefined ? '' : `, clause ${hands.clause}`
  return `${handsWords(hands)}${clause}`
}

export interface StepLine {
  readonly id: string
  readonly words: string
  readonly done: boolean
  /** It is this phone's own. */
  readonly own: boolean
}

export function stepLine({ move, done }: MoveStep, { nameOf, person }: Telling): StepLine {
  const own = move.person === person
  const id = `${move.person} ${move.duty} ${move.post ?? ''}`
  return { id, words: moveWords(move, nameOf), done, own }
}

export interface Wait extends CountdownShown {
  readonly id: 'earliest' | 'planned'
}

/** Not before, then about when it is planned. */
export function waitsOf({ earliest, planned }: LaneChange, telling: Telling): readonly Wait[] {
  return [
    ...(earliest ? [wait('earliest', earliest, telling)] : []),
    ...(planned.lengthMs > 0 ? [wait('planned', planned, telling)] : []),
  ]
}

function wait(
  id: Wait['id'],
  { at, lengthMs, toGoMs }: LaneChange['planned'],
  { now, timeZone }: Telling,
): Wait {
  const time = clockTime(at, timeZone, { dayRelativeTo: now })
  const label = id === 'earliest' ? `not before ${time}` : `restart about ${time}`
  const urgency = id === 'earliest' ? 'calm' : urgencyOf('segmentEnd', toGoMs)
  const common = { id, urgency, held: false, lit: false } as const
  if (toGoMs > 0)
    return { ...common, label, figure: countdown(toGoMs), left: toGoMs / Math.max(1, lengthMs) }
  // The earliest restart is no limit once it is past: it may be green at any moment.
  return id === 'earliest'
    ? { ...common, label: `${label}: it may be green at any moment`, left: 0 }
    : { ...common, label: `${label}, over by`, figure: figure(toGoMs), left: 0 }
}
