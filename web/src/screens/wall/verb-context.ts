/** Which verbs mean something here, and which of them this device may record. */
import { inForce, type Kind, type Phase, type State } from '@pitlamp/race'
import type { WallVerb } from './verb-words.ts'

export interface VerbContext {
  readonly phase: Phase
  readonly may: (kind: Kind) => boolean
  /** Without people nobody can be moved, called or missing. */
  readonly hasCrew: boolean
  /** What *Car in* stands for by the rules. */
  readonly carIn: 'stopped' | 'pitEntry'
  /** Segments run in a lane each. */
  readonly hasLanes: boolean
  /** The car runs on a load. */
  readonly hasEnergy: boolean
}

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
  said: 'ruling.1',
  standing: 'classification.1',
  work: 'workTicked.1',
  measure: 'measured.1',
  whoIsHere: 'availability.1',
  lane: 'laneDrawn.1',
  energy: 'energy.1',
  more: undefined,
} as const satisfies Record<WallVerb, Kind | undefined>

const OF_PEOPLE: ReadonlySet<WallVerb> = new Set(['change', 'duty', 'call', 'whoIsHere'])

export function isAllowed(verb: WallVerb, context: VerbContext): boolean {
  const kind = KIND_OF[verb]
  if (kind === undefined || !context.may(kind)) return false
  if (OF_PEOPLE.has(verb) && !context.hasCrew) return false
  return meansSomething(verb, context)
}

function meansSomething(verb: WallVerb, { phase, hasLanes, hasEnergy }: VerbContext): boolean {
  switch (verb) {
    case 'green':
      return phase.next !== undefined
    case 'carIn':
      return phase.carIn === undefined
    case 'redFlag':
      return phase.cause !== 'redFlag'
    case 'setClock':
      return phase.phase === 'green' || phase.phase === 'powerOff'
    case 'lane':
      return hasLanes && phase.next !== undefined
    case 'energy':
      return hasEnergy
    default:
      return true
  }
}

/** A segment with a lane of its own, or a rule about lanes. Where neither is said cars are free to change lane. */
export function hasLanes(state: State, now: number): boolean {
  const regulations = inForce(state, 'rules', now)
  if (!regulations) return false
  const { programme, rules } = regulations
  return (
    programme.some((item) => item.kind === 'laneChange') ||
    programme.some((item) => item.kind === 'segment' && item.lane !== undefined) ||
    rules.some(({ kind }) => LANE_RULES.has(kind))
  )
}

const LANE_RULES: ReadonlySet<string> = new Set(['laneChange', 'laneOrder', 'startingLane'])
