/** The verbs of a stop. Six places that keep still while the car is in: only their meaning wakes up anew. */
import type { Kind, Phase, StopState } from '@pitlamp/race'
import type { VerbShown } from '../../parts/verb.ts'

export interface StopVerbContext {
  readonly phase: Phase
  readonly stop: StopState
  readonly may: (kind: Kind) => boolean
  /** The car's coming in can still be taken back. */
  readonly undoable: boolean
  /** What *Car out* stands for by the rules. */
  readonly carOut: 'leaving' | 'pitExit'
  /** The job that is next on the list. */
  readonly job?: string
}

/** Places on the bar, from 0. */
export const PLACE = { moreWork: 0, jobDone: 1, leaveJob: 2 } as const

export function stopVerbs(context: StopVerbContext): readonly VerbShown[] {
  const { phase, stop, may, undoable, carOut, job } = context
  if (!may('stopOut.1')) return may('faultNoted.1') ? [MORE_WORK, NOTE] : []
  return [
    undoable ? { id: 'undoCarIn', word: 'Undo car in', plain: true } : MORE_WORK,
    stop.moments.stopped === undefined ? { id: 'stopped', word: 'Stopped' } : jobDone(job),
    job === undefined ? CALL : { id: 'leaveJob', word: 'Leave this job', hint: job },
    power(phase),
    { id: 'more', word: 'More' },
    {
      id: 'carOut',
      word: 'Car out',
      hint: carOut === 'leaving' ? 'as it leaves' : 'at the pit exit',
      first: true,
      wide: true,
    },
  ]
}

const MORE_WORK: VerbShown = { id: 'moreWork', word: 'More work' }
const NOTE: VerbShown = { id: 'note', word: 'Note' }
const CALL: VerbShown = { id: 'call', word: 'Call somebody' }

function jobDone(job: string | undefined): VerbShown {
  return job === undefined ? NOTE : { id: 'jobDone', word: 'Job done', hint: job }
}

function power({ phase, cause }: Phase): VerbShown {
  if (phase === 'powerOff') {
    return cause === 'redFlag'
      ? { id: 'greenAgain', word: 'Green' }
      : { id: 'powerOn', word: 'Power is on' }
  }
  if (phase === 'green') return { id: 'powerOff', word: 'Power is off' }
  return { id: 'green', word: 'Green' }
}
