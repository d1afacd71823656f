/** Messages under way. Nothing moves by itself: a schedule picks what arrives, is lost, or arrives twice. */

export interface Message {
  readonly what: string
  readonly arrive: () => void | Promise<void>
}

export class Network {
  readonly #underWay: Message[] = []

  get isEmpty(): boolean {
    return this.#underWay.length === 0
  }

  send(message: Message): void {
    this.#underWay.push(message)
  }

  /** Any of them, so that they overtake one another. */
  async deliver(pick: number): Promise<void> {
    await this.#take(pick)?.arrive()
  }

  lose(pick: number): void {
    this.#take(pick)
  }

  /** It arrives, and is still under way. */
  async repeat(pick: number): Promise<void> {
    await this.#underWay[pick % this.#underWay.length]?.arrive()
  }

  #take(pick: number): Message | undefined {
    if (this.isEmpty) return undefined
    return this.#underWay.splice(pick % this.#underWay.length, 1)[0]
  }
}
