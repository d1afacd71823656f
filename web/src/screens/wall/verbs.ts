/**
 * Which verbs stand on the wall's bar. They record what happened in the hall; none asks for it. A place keeps
 * its meaning through a phase, the last is always More, and a verb this device may not record is left out.
 */
import type { Kind, Phase } from '@pitlamp/race'
import type { VerbShown } from '../../parts/verb.ts'

export type WallVerb =
  | 'green'
  | 'powerOn'
  | 'powerOff'
  | 'redFlag'
  | 'segmentOver'
  | 'carIn'
  | 'change'
  | 'duty'
  | 'deSlot'
  | 'wrongLane'
  | 'contact'
  | 'stuck'
  | 'fault'
  | 'setClock'
  | 'call'
  | 'note'
  | 'more'

/** Verbs that lay a sheet on the wall before they record. A fault's time is stamped as its sheet opens. */
const SHEETS: ReadonlySet<string> = new Set<SheetVerb>([
  'change',
  'duty',
  'fault',
  'setClock',
  'call',
  'note',
  'more',
])
export type SheetVerb = Extract<
  WallVerb,
  'change' | 'duty' | 'fault' | 'setClock' | 'call' | 'note' | 'more'
>

/** What each one records; More records nothing. */
const KIND_OF = {
  green: 'green.1',
  powerOn: 'powerOn.1',
  powerOff: 'trackCall.1',
  redFlag: 'redFlag.1',
  segmentOver: 'segmentEnd.1',
  carIn: 'stopIn.1',
  change: 'handover.1',
  duty: 'dutyTaken.1',
  deSlot: 'incident.1',
  wrongLane: 'incident.1',
  contact: 'incident.1',
  stuck: 'incident.1',
  fault: 'faultNoted.1',
  setClock: 'clockRead.1',
  call: 'call.1',
  note: 'note.1',
  more: undefined,
} as const satisfies Record<WallVerb, Kind | undefined>

const WORD = {
  green: 'Green',
  powerOn: 'Power is on',
  powerOff: 'Power is off',
  redFlag: 'Red flag',
  segmentOver: 'Segment over',
  carIn: 'Car in',
  change: 'Change',
  duty: 'Take over a duty',
  deSlot: 'De-slot',
  wrongLane: 'Wrong lane',
  contact: 'Contact',
  stuck: 'Stuck',
  fault: 'Fault',
  setClock: 'Set clock',
  call: 'Call somebody',
  note: 'Note',
  more: 'More',
} as const satisfies Record<WallVerb, string>

type Places = readonly WallVerb[]
export function isSheet(verb: string): verb is SheetVerb {
  return SHEETS.has(verb)
}

interface PhaseVerbs {
  readonly bar: Places
  readonly more: Places
}

const incidents: Places = ['wrongLane', 'contact', 'stuck']
const BY_PHASE: Readonly<Record<Phase['phase'], PhaseVerbs>> = {
  beforeStart: {
    bar: ['green', 'change', 'fault', 'note', 'more'],
    more: ['duty', 'call'],
  },
  green: {
    bar: ['carIn', 'change', 'deSlot', 'fault', 'powerOff', 'more'],
    more: ['segmentOver', 'setClock', 'call', 'note', 'redFlag', 'duty', ...incidents],
  },
  powerOff: {
    bar: ['powerOn', 'segmentOver', 'setClock', 'fault', 'note', 'more'],
    more: ['carIn', 'change', 'redFlag', 'call', 'duty', 'deSlot', ...incidents],
  },
  between: {
    bar: ['green', 'change', 'fault', 'note', 'more'],
    more: ['call', 'duty'],
  },
  finished: {
    bar: ['fault', 'note', 'more'],
    more: ['call', 'duty'],
  },
}

export interface VerbContext {
  readonly phase: Phase
  readonly may: (kind: Kind) => boolean
  /** Without people nobody can be moved or called. */
  readonly hasCrew: boolean
  /** What *Car in* stands for by the rules. */
  readonly carIn: 'stopped' | 'pitEntry'
}

export function verbsFor(context: VerbContext): readonly VerbShown[] {
  const { bar } = BY_PHASE[context.phase.phase]
  return bar
    .filter((verb) => verb === 'more' || allowed(verb, context))
    .map((verb) => shown(verb, context))
    .map((verb) => ({ ...verb, first: MEANT.has(verb.id) }))
}

export function moreFor(context: VerbContext): readonly VerbShown[] {
  return BY_PHASE[context.phase.phase].more
    .filter((verb) => allowed(verb, context))
    .map((verb) => shown(verb, context))
}

const OF_PEOPLE: ReadonlySet<WallVerb> = new Set(['change', 'duty', 'call'])
const MEANT: ReadonlySet<string> = new Set(['green', 'greenAgain', 'powerOn', 'carIn'])

function allowed(verb: WallVerb, { phase, may, hasCrew }: VerbContext): boolean {
  const kind = KIND_OF[verb]
  if (kind === undefined || !may(kind) || (OF_PEOPLE.has(verb) && !hasCrew)) return false
  if (verb === 'green') return phase.next !== undefined
  if (verb === 'carIn') return phase.carIn === undefined
  return verb !== 'redFlag' || phase.cause !== 'redFlag'
}

/** After a red flag cars run again from the grid: that is a green, not power coming back. */
function shown(verb: WallVerb, { phase, carIn }: VerbContext): VerbShown {
  if (verb === 'powerOn' && phase.cause === 'redFlag') return { id: 'greenAgain', word: 'Green' }
  if (verb === 'segmentOver' && isLast(phase)) return { id: verb, word: 'Flag' }
  if (verb === 'carIn') {
    return {
      id: verb,
      word: WORD[verb],
      hint: carIn === 'stopped' ? 'as it stops' : 'at the pit entry',
    }
  }
  if (verb === 'green' && phase.next) {
    return { id: verb, word: WORD[verb], hint: `segment ${phase.next.index + 1}` }
  }
  return { id: verb, word: WORD[verb] }
}

function isLast({ segment }: Phase): boolean {
  return segment !== undefined && segment.index === segment.of - 1
}
