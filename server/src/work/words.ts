/** What came of it, in sentences that name rules and people. */
import type { Fault } from '@pitlamp/planner'
import { durationInWords, sentenceOf, type CrewMember } from '@pitlamp/race'
import type { Ground } from './mapping/ground.ts'
import { lineOf } from './mapping/mapping.ts'
import { plannedPins } from './mapping/pins.ts'

const NEEDS: Readonly<Record<string, string>> = {
  post: 'Somebody is at a post all the time, as was asked for here.',
  wall: 'Somebody is at the wall all the time, as was asked for here.',
  bench: 'Somebody is at the bench all the time, as was asked for here.',
}

const DOES = {
  controller: 'drives',
  post: 'marshals',
  wall: 'is on the wall',
  bench: 'is at the bench',
  offDuty: 'is off duty',
} as const

/** One sentence for each line the ids come from, in the order given. */
export function sentencesOf(ids: readonly string[], ground: Ground): readonly string[] {
  return [...new Set(ids.map((id) => sentenceFor(id, ground)))]
}

export function sentenceFor(id: string, ground: Ground): string {
  const [line, of = '', which = ''] = [lineOf(id), ...id.split('/').slice(1)]
  if (line === 'need') return NEEDS[of] ?? ''
  if (line === 'pin') return pinned(id, ground)
  if (line === 'wish') return wished(of, which, ground)
  const rule = ground.regulations.rules.find((one) => one.id === line)
  return rule
    ? ruleWords(sentenceOf(rule, { segment: (name) => segmentName(name, ground) }), rule.clause)
    : line
}

function ruleWords(sentence: string, clause: string | undefined): string {
  return clause === undefined ? sentence : `${clause}: ${sentence}`
}

function pinned(id: string, ground: Ground): string {
  const line = ground.planned.find((one) => `pin/${one.id}` === id)
  const kept = line ?? plannedPins(ground).find((pin) => pin.id === id)
  if (!kept) return 'A line that is kept.'
  const { person, segment, fromMs, toMs } = kept
  const stretch = `from ${durationInWords(fromMs)} to ${durationInWords(toMs)}`
  const does = DOES['duty' in kept ? kept.duty : 'offDuty']
  return `${nameOf(person, ground)} ${does} ${stretch} of ${segmentName(segment, ground)}: you keep this.`
}

function wished(person: string, line: string, ground: Ground): string {
  const name = nameOf(person, ground)
  const member = ground.crew.people.find(({ id }) => id === person)
  if (line === 'restBlock') {
    return `${name} wishes for ${durationInWords(member?.restBlock?.atLeastMs ?? 0)} off duty without a break.`
  }
  return `${name} ${wishWords(member, line, ground)}.`
}

function wishWords(member: CrewMember | undefined, line: string, ground: Ground): string {
  const wish = member?.wishList?.find(({ id }) => id === line)
  switch (wish?.kind) {
    case 'beside':
      return `wishes for ${nameOf(wish.other, ground)} beside them while driving`
    case 'after':
      return `wishes to drive after ${nameOf(wish.other, ground)}`
    case 'before':
      return `wishes to drive before ${nameOf(wish.other, ground)}`
    case 'notAtEnd':
      return `does not wish to drive ${wish.which}`
    case 'notBetween':
      return 'does not wish to drive between two times'
    case 'noMoreThan':
      return `wishes to drive no more than ${durationInWords(wish.atMostMs)}`
    case undefined:
      return 'has a wish'
  }
}

/** Who drives, and who is not there all the time: what rules that collide have to be kept with. */
export function peopleWords({ crew, regulations }: Ground): readonly string[] {
  const drivers = crew.people.filter(
    ({ duties }) => duties.length === 0 || duties.includes('controller'),
  )
  const partly = crew.people.filter(({ there = [] }) => there.length > 0)
  const drive = `${listed(drivers.map(({ name }) => name))} can drive.`
  const isThere = partly.map(({ name, there = [] }) => {
    const times = there.map(({ fromAt, toAt }) => {
      const from = fromAt === undefined ? '' : ` from ${clockWords(fromAt, regulations.timeZone)}`
      const to = toAt === undefined ? '' : ` until ${clockWords(toAt, regulations.timeZone)}`
      return `${from}${to}`
    })
    return `${name} is there${times.join(' and')} only.`
  })
  return [drive, ...isThere]
}

export function faultWords(faults: readonly Fault[], ground: Ground): readonly string[] {
  return [...new Set(faults.map((fault) => faultSentence(fault, ground)))]
}

function faultSentence(fault: Fault, ground: Ground): string {
  switch (fault.kind) {
    case 'noTime':
      return 'The race has no length: write the segments down on Rules.'
    case 'nobodyDrives':
      return 'Nobody in the crew can drive: say who on Crew.'
    case 'tooMuch':
      return `That would be ${fault.slots} moments at which somebody may change: take longer steps.`
    case 'badNumber':
      return `A number cannot be worked with (${fault.path}: ${fault.value}). Look at Rules, Crew and the plan.`
    case 'idTwice':
      return `Two rules share a line: “${sentenceFor(fault.id, ground)}”. Take one of them out and write it again.`
    case 'aboutNobody':
      return `“${sentenceFor(fault.id, ground)}” is about ${aboutWhom(fault.who, ground)}, and nobody in the crew is one.`
    case 'nowhere':
      return `“${sentenceFor(fault.id, ground)}” names a segment that is not in the programme.`
    case 'nobodyThere': {
      const [from, to] = [durationInWords(fault.fromMs), durationInWords(fault.toMs)]
      return `From ${from} to ${to} of ${segmentName(fault.segment, ground)} nobody who can drive is there.`
    }
  }
}

function aboutWhom(who: string, { crew }: Ground): string {
  return crew.people.find(({ id }) => id === who)?.name ?? `a ${who}`
}

/** Whose pace was not typed, and what was taken instead. */
export function paceNotes({ crew }: Ground): readonly string[] {
  const unknown = crew.people.filter(
    ({ duties, paceMs }) => !paceMs && (duties.length === 0 || duties.includes('controller')),
  )
  if (unknown.length === 0) return []
  const names = listed(unknown.map(({ name }) => name))
  return crew.people.some(({ paceMs }) => paceMs)
    ? [`No pace is written down for ${names}: taken to be as quick as the others.`]
    : ['Nobody’s pace is written down on Crew: all are taken to be as quick, and no laps are told.']
}

function segmentName(id: string, { timeline }: Ground): string {
  const segment = timeline.segments.find((one) => one.id === id)
  return segment?.name ?? (segment ? `segment ${segment.index + 1}` : 'a segment that is gone')
}

function nameOf(person: string, { crew }: Ground): string {
  return crew.people.find(({ id }) => id === person)?.name ?? 'Somebody'
}

function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? 'Nobody'
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`
}

/** `14:30` at the venue, with the day of the week: a race may last longer than one. */
function clockWords(at: number, timeZone: string): string {
  const options = {
    weekday: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  } as const
  return new Intl.DateTimeFormat('en-GB', { ...options, timeZone }).format(at)
}
