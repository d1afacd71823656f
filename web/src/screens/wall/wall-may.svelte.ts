/** What this device may record from the wall, where it means something now. */
import type { Kind, Phase } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'

interface Standing {
  readonly phase: Phase
  readonly driving: string | undefined
}

export class WallMay {
  readonly #of: () => MeetingPort
  readonly #standing: Standing

  constructor(meeting: () => MeetingPort, standing: Standing) {
    this.#of = meeting
    this.#standing = standing
  }

  readonly mend = $derived.by(() => this.#may('repairFinished.1'))
  readonly answer = $derived.by(() => this.#may('answer.1'))
  readonly call = $derived.by(() => this.#may('call.1'))
  readonly fit = $derived.by(() => this.#may('partFitted.1'))
  readonly fill = $derived.by(() => this.#may('energy.1'))
  readonly serve = $derived.by(() => this.#may('penaltyServed.1'))
  readonly said = $derived.by(() => this.#may('ruling.1'))
  readonly work = $derived.by(() => this.#may('workTicked.1') || this.#may('measured.1'))
  readonly stand = $derived.by(() => this.#may('classification.1'))
  readonly draw = $derived.by(() => this.#may('laneDrawn.1'))
  readonly change = $derived.by(() => this.#may('handover.1'))
  readonly stayOut = $derived.by(
    () => this.#runs() && this.#standing.driving !== undefined && this.#may('stayOut.1'),
  )
  readonly setClock = $derived.by(() => this.#runs() && this.#may('clockRead.1'))

  #runs(): boolean {
    const { phase } = this.#standing.phase
    return phase === 'green' || phase === 'powerOff'
  }

  #may(kind: Kind): boolean {
    return this.#of().may(kind)
  }
}
