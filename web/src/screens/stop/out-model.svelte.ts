/** The car is out: what the last stop came to, its moments still to be said, and how the next begins. */
import { countedMoments, type StopState } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { lastStopVerdict } from '../../parts/stop-verdict.ts'
import type { VerbShown } from '../../parts/verb.ts'
import type { WallModel } from '../wall/wall-model.svelte.ts'

/** A pit exit not pressed within this is not pressed any more. Common practice, no source. */
const EXIT_WITHIN_MS = 120_000

export class OutModel {
  readonly #of: () => MeetingPort
  readonly #wallOf: () => WallModel

  constructor(meeting: () => MeetingPort, wall: () => WallModel) {
    this.#of = meeting
    this.#wallOf = wall
  }

  readonly verdict = $derived.by(() => lastStopVerdict(this.#of().state, this.#of().now))

  /** Car in, and quietly beside it the moments that the minimum does not count. */
  readonly verbs = $derived.by((): readonly VerbShown[] => {
    const { state, now } = this.#of()
    if (!this.#of().may('stopOut.1')) return []
    const { from, to } = countedMoments(state, now)
    const carIn = this.#wallOf().bar.shown.filter(({ id }) => id === 'carIn')
    const left = leftItsBox(state.car.stops.at(-1), now)
    return [
      ...(left && to === 'pitExit' ? [{ id: 'pitExit', word: 'Pit exit', first: true }] : []),
      ...carIn.map((verb) => ({ ...verb, wide: true })),
      ...(from === 'stopped' && carIn.length > 0 ? [PIT_ENTRY] : []),
      ...(left && to === 'leaving' ? [{ id: 'pitExit', word: 'Pit exit', plain: true }] : []),
    ]
  })

  readonly press = (id: string, place: number): void => {
    const { recorder } = this.#wallOf()
    if (id === 'pitExit') {
      const body = { moment: 'pitExit' } as const
      recorder.record({ kind: 'stopOut.1', body, word: 'Pit exit', place })
    } else if (id === 'pitEntry') {
      const body = { moment: 'pitEntry' } as const
      recorder.record({ kind: 'stopIn.1', body, word: 'Pit entry', place })
    } else this.#wallOf().press(id, place)
  }
}

const PIT_ENTRY: VerbShown = { id: 'pitEntry', word: 'Pit entry', plain: true }

function leftItsBox(stop: StopState | undefined, now: number): boolean {
  const leaving = stop?.moments.leaving?.at
  return leaving !== undefined && !stop?.moments.pitExit && now - leaving <= EXIT_WITHIN_MS
}
