/** One press writes this meeting, as this device has it, into a file: with no server too. */
import { writeCopy } from '@pitlamp/contract'
import type { MeetingPort } from '../../meeting/port.ts'
import { saveFile } from '../../parts/save-file.ts'
import { clockTime } from '../../parts/time.ts'
import { fileName, written } from './copy-file.ts'

export class WriteCopy {
  readonly #of: () => MeetingPort
  readonly #timeZone: () => string
  /** What was written, a sentence each. */
  said = $state.raw<readonly string[]>([])
  problem = $state<string>()

  constructor(meeting: () => MeetingPort, timeZone: () => string) {
    this.#of = meeting
    this.#timeZone = timeZone
  }

  readonly possible = $derived.by(() => this.#of().copied !== undefined)

  async write(): Promise<void> {
    this.problem = undefined
    this.said = []
    const copy = await this.#of().copied?.()
    if (!copy) {
      this.problem = 'This page is still loading. Nothing was written: try again in a moment.'
      return
    }
    saveFile(fileName(copy), writeCopy(copy))
    this.said = written(copy, clockTime(copy.asOf, this.#timeZone(), { seconds: true }))
  }
}
