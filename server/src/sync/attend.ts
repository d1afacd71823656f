/**
 * What other processes over the same database did. Hints come at once; once a second logs and devices are looked at,
 * so that no hint about them has to arrive. Who is there is shown late where one did not.
 */
import type { Deps } from '../deps.ts'
import type { Neighbours } from '../storage/port.ts'

const LOOK_EVERY_MS = 1_000
const BEAT_EVERY_MS = 2_000
/** Changes are looked for from this long before the last look: further than two processes' clocks are apart. */
const OVERLAP_MS = 5_000

type Changed = Awaited<ReturnType<Deps['storage']['read']['devicesChangedSince']>>

/** What there is to do about what others did. */
export interface Concerns {
  /** The meetings of the screens here, and how far those were told the log goes. */
  readonly heads: () => ReadonlyMap<string, number>
  readonly logCameTo: (meeting: string, lastSeq: number) => void
  readonly devicesChanged: (changed: Changed) => void
  readonly screensChanged: (meeting: string) => void
  /** The other processes no longer know of the screens here. */
  readonly showAgain: () => void
}

/** Listens and looks, until it is stopped; stopping takes this process's screens out of the others' sight. */
export function attendTo(
  neighbours: Neighbours,
  { storage, time }: Pick<Deps, 'storage' | 'time'>,
  concerns: Concerns,
): { readonly stop: () => Promise<void> } {
  let lookedAt = time.now()
  const lookAtDevices = async () => {
    const nowMs = time.now()
    concerns.devicesChanged(await storage.read.devicesChangedSince(lookedAt - OVERLAP_MS))
    // Not forwards only: the captain may have set the clock back.
    lookedAt = nowMs
  }
  const lookAtLogs = async () => {
    for (const { meeting, lastSeq } of await storage.read.logsBeyond(concerns.heads())) {
      concerns.logCameTo(meeting, lastSeq)
    }
  }
  const look = calmly(() => Promise.all([lookAtDevices(), lookAtLogs()]))
  const devices = calmly(lookAtDevices)
  const beat = calmly(async () => {
    const { process } = neighbours
    const { fresh, gone } = await storage.run('beat', { process, nowMs: time.now() })
    if (fresh) concerns.showAgain()
    for (const meeting of gone) screensGone(meeting)
  })
  const screensGone = (meeting: string) => {
    concerns.screensChanged(meeting)
    neighbours.say({ say: 'presence', meeting })
  }
  neighbours.onWord((word) => {
    if (word.say === 'device') devices()
    if (word.say === 'presence') concerns.screensChanged(word.meeting)
    if (word.say !== 'missed') return
    look()
    for (const meeting of concerns.heads().keys()) concerns.screensChanged(meeting)
  })
  beat()
  const timers = [setInterval(look, LOOK_EVERY_MS), setInterval(beat, BEAT_EVERY_MS)]
  for (const timer of timers) timer.unref()
  return {
    async stop() {
      for (const timer of timers) clearInterval(timer)
      const ended = storage.run('endProcess', { process: neighbours.process })
      const { gone } = await ended.catch(() => ({ gone: [] }))
      for (const meeting of gone) neighbours.say({ say: 'presence', meeting })
    },
  }
}

/** Not twice at once, and once more where it was asked for meanwhile. What fails is tried again with the next look. */
function calmly(act: () => Promise<unknown>): () => void {
  let asked = 0
  const run = async () => {
    for (let done = 0; done < asked;) {
      done = asked
      await act().catch(() => undefined)
    }
    asked = 0
  }
  return () => {
    asked += 1
    if (asked === 1) void run()
  }
}
