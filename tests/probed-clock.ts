/** A screen's clock: the pure reckoning of @pitlamp/sync, fed by probes of this process's own clocks. */
import { PROBE_EVERY_MS, type ProbeAnswer } from '@pitlamp/contract'
import {
  addSample,
  heardEpoch,
  newScreenClock,
  noticeStep,
  probesWanted,
  reckon,
  reckonedByWall,
  startOver,
  type Reckoning,
  type ScreenClock,
} from '@pitlamp/sync'

/** Asks the server; undefined where no answer came. */
type Probe = (t0: number) => Promise<ProbeAnswer | undefined>

export class ProbedClock {
  #clock: ScreenClock = newScreenClock(instants())
  readonly #probe: Probe
  readonly #beat: NodeJS.Timeout

  constructor(probe: Probe) {
    this.#probe = probe
    this.#beat = setInterval(() => void this.probe(), PROBE_EVERY_MS)
  }

  reckoning(): Reckoning {
    return reckon(this.#clock, performance.now())
  }

  /** For the hello: what is known of the server's time from before this connection. */
  reckoned(): ReturnType<typeof reckonedByWall> {
    const { wall } = this.#clock
    return wall && reckonedByWall(wall, Date.now())
  }

  connected(): void {
    this.#clock = startOver(this.#clock, instants())
    void this.probe()
  }

  heardEpoch(epoch: number): void {
    this.#clock = heardEpoch(this.#clock, epoch)
    void this.probe()
  }

  /** One probe, and as many more as are wanted after the clock was started over. */
  async probe(): Promise<void> {
    this.#clock = noticeStep(this.#clock, instants())
    do {
      const answer = await this.#probe(performance.now())
      if (answer === undefined) return
      const arrived = { t3: performance.now(), dateNow: Date.now() }
      this.#clock = addSample(this.#clock, { ...answer, ...arrived })
    } while (probesWanted(this.#clock) > 0)
  }

  stop(): void {
    clearInterval(this.#beat)
  }
}

function instants() {
  return { localMs: performance.now(), dateMs: Date.now() }
}
