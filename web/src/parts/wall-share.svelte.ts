/** The wall on a phone, until the tablet is back. Only the server can say who has it. */
import { may } from '@pitlamp/race'
import type { Reply } from '../api/ask.ts'
import { giveBackWall, takeBackWall, takeWall } from '../api/wall.ts'
import type { MeetingPort } from '../meeting/port.ts'
import { deviceWords } from './holders.ts'

const NO_SERVER =
  'The wall can be taken only while the server answers: it says who has it. Nothing was changed.'

export class WallShare {
  readonly #of: () => MeetingPort
  /** Asked whether it is meant. */
  sure = $state(false)
  problem = $state<string>()

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
  }

  readonly own = $derived.by(() => this.#of().wall?.own)
  /** Other devices that have it, for those who may take it back. */
  readonly elsewhere = $derived.by(() => {
    const { wall, role, device: own } = this.#of()
    if (this.own !== undefined || !may(role, { do: 'takeBackWall' })) return []
    const taken = (wall?.taken ?? []).filter(({ device }) => device !== own)
    return taken.map((one) => ({ id: one.device, words: deviceWords(this.#of(), one) }))
  })

  /** @returns whether this device has it now */
  async take(): Promise<boolean> {
    this.sure = false
    return this.#said(await takeWall(this.#of().id))
  }

  async giveBack(): Promise<void> {
    this.#said(await giveBackWall(this.#of().id))
  }

  async takeBack(device: string): Promise<void> {
    this.#said(await takeBackWall(this.#of().id, device))
  }

  #said(reply: Reply<unknown>): boolean {
    const failed = 'failed' in reply ? reply.failed : undefined
    this.problem = failed?.refusal === 'noServer' ? NO_SERVER : failed?.sentence
    return failed === undefined
  }
}
