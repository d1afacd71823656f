/** The four moments of a visit: those the rules count from and to, and the others, which are kept quiet. */
import { countedMoments, type State, type StopMoment, type StopState } from '@pitlamp/race'
import { MOMENT_WORD } from '../../parts/stop-verdict.ts'
import { sentenceCase } from '../../parts/moves.ts'
import { clockTime } from '../../parts/time.ts'

export interface MomentShown {
  readonly moment: StopMoment
  readonly word: string
  readonly time?: string
  /** The minimum counts from or to it. */
  readonly counted: boolean
}

const ORDER = ['pitEntry', 'stopped', 'leaving', 'pitExit'] as const

export function momentsShown(
  stop: StopState,
  {
    state,
    now,
    timeZone,
  }: { readonly state: State; readonly now: number; readonly timeZone: string },
): readonly MomentShown[] {
  const { from, to } = countedMoments(state, now)
  return ORDER.map((moment) => {
    const at = stop.moments[moment]?.at
    return {
      moment,
      word: sentenceCase(MOMENT_WORD[moment]),
      counted: moment === from || moment === to,
      time: at === undefined ? undefined : clockTime(at, timeZone, { seconds: true }),
    }
  })
}
