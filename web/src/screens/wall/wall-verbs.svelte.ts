/** The verbs that stand on the wall now: on the bar, behind More, and on a stop itself. */
import { countedMoments, type Phase } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import type { CrewNames } from '../../parts/crew.ts'
import type { VerbShown } from '../../parts/verb.ts'
import { hasEnergy } from './energy-shown.ts'
import { hasLanes, type VerbContext } from './verb-context.ts'
import type { WallVerb } from './verb-words.ts'
import { moreFor, sheetsInStop, verbsFor } from './verbs.ts'

interface Standing {
  readonly phase: Phase
  readonly seenBySecond: { readonly now: number; readonly crew: CrewNames }
}

export class WallVerbs {
  readonly #of: () => MeetingPort
  readonly #standing: Standing

  constructor(meeting: () => MeetingPort, standing: Standing) {
    this.#of = meeting
    this.#standing = standing
  }

  readonly #context = $derived.by((): VerbContext => {
    const { state } = this.#of()
    const { now, crew } = this.#standing.seenBySecond
    return {
      phase: this.#standing.phase,
      may: (kind) => this.#of().may(kind),
      hasCrew: crew.people.length > 0,
      hasLanes: hasLanes(state, now),
      hasEnergy: hasEnergy(state, now),
      carIn: countedMoments(state, now).from,
    }
  })
  readonly shown = $derived.by(() => verbsFor(this.#context))
  readonly more = $derived.by(() => moreFor(this.#context))
  readonly inStop = $derived.by(() => sheetsInStop(this.#context))

  /** The last place is More's, and of whatever is opened where it stands. */
  get lastPlace(): number {
    return this.shown.length - 1
  }

  readonly offers = (verb: WallVerb): boolean => has(this.shown, verb) || this.isBehindMore(verb)

  readonly isBehindMore = (verb: WallVerb): boolean => has(this.more, verb)
}

function has(verbs: readonly VerbShown[], verb: WallVerb): boolean {
  return verbs.some(({ id }) => id === verb)
}
