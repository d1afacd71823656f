/**
 * Which verbs stand on the wall's bar. They record what happened in the hall; none asks for it. A place keeps
 * its meaning through a phase, the last is always More. A verb that means nothing here, or that this device may
 * not record, is left out and the others close up: what decides it does not change within a phase.
 */
import type { Phase } from '@pitlamp/race'
import type { VerbShown } from '../../parts/verb.ts'
import { isAllowed, type VerbContext } from './verb-context.ts'
import { isSheet, WORD, type WallVerb } from './verb-words.ts'

type Places = readonly WallVerb[]

interface PhaseVerbs {
  readonly bar: Places
  readonly more: Places
}

const incidents: Places = ['wrongLane', 'contact', 'stuck']
const BY_PHASE: Readonly<Record<Phase['phase'], PhaseVerbs>> = {
  beforeStart: {
    bar: ['green', 'setClock', 'lane', 'whoIsHere', 'fault', 'note', 'more'],
    more: ['change', 'call', 'duty', 'measure', 'work', 'said'],
  },
  green: {
    bar: ['carIn', 'change', 'deSlot', 'fault', 'powerOff', 'said', 'more'],
    more: [
      ...(['segmentOver', 'standing', 'setClock', 'call', 'note', 'whoIsHere'] as const),
      ...(['energy', 'measure', 'duty', 'redFlag'] as const),
      ...incidents,
    ],
  },
  powerOff: {
    bar: ['powerOn', 'segmentOver', 'setClock', 'fault', 'said', 'note', 'more'],
    more: [
      ...(['carIn', 'change', 'standing', 'call', 'whoIsHere', 'energy', 'measure'] as const),
      ...(['duty', 'redFlag', 'deSlot'] as const),
      ...incidents,
    ],
  },
  between: {
    bar: ['green', 'measure', 'work', 'setClock', 'whoIsHere', 'note', 'more'],
    more: ['change', 'fault', 'said', 'standing', 'lane', 'call', 'duty', 'energy'],
  },
  finished: {
    bar: ['fault', 'note', 'more'],
    more: ['said', 'standing', 'measure', 'call', 'duty'],
  },
}

/**
 * While the car is in the bar is the stop's; whatever lays a sheet stands on the stop itself as well, so that it takes
 * two presses there too.
 */
const IN_STOP: Places = [
  ...(['fault', 'said', 'call', 'note', 'setClock', 'energy', 'measure', 'standing'] as const),
  ...(['whoIsHere', 'segmentOver', 'redFlag'] as const),
  ...incidents,
]

export function verbsFor(context: VerbContext): readonly VerbShown[] {
  return BY_PHASE[context.phase.phase].bar
    .filter((verb) => verb === 'more' || isAllowed(verb, context))
    .map((verb) => shown(verb, context))
    .map((verb) => ({ ...verb, first: MEANT.has(verb.id) }))
}

/** What lays a sheet while the car is in. A fault stamps its time first, behind More. */
export function sheetsInStop(context: VerbContext) {
  return IN_STOP.flatMap((verb) =>
    verb !== 'fault' && isSheet(verb) && isAllowed(verb, context)
      ? [{ id: verb, word: WORD[verb] }]
      : [],
  )
}

export function moreFor(context: VerbContext): readonly VerbShown[] {
  const { phase, carIn } = context.phase
  return (carIn === undefined ? BY_PHASE[phase].more : IN_STOP)
    .filter((verb) => isAllowed(verb, context))
    .map((verb) => shown(verb, context))
}

const MEANT: ReadonlySet<string> = new Set(['green', 'greenAgain', 'powerOn', 'carIn'])

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
