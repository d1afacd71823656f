/** One piece of work at a time for each team, in the order in which they were asked for, and not more than a few in all. */

export class Queue {
  readonly #most: number
  readonly #busy = new Set<string>()
  #waiting: readonly Waiting[] = []

  constructor(most: number) {
    this.#most = most
  }

  /** `turn` resolves with what gives the turn back; `leave` gives up waiting for it, and then it never does. */
  enter(team: string): { readonly turn: Promise<() => void>; readonly leave: () => void } {
    let begin: (leave: () => void) => void = () => undefined
    const turn = new Promise<() => void>((resolve) => (begin = resolve))
    const waiting: Waiting = { team, begin }
    this.#waiting = [...this.#waiting, waiting]
    this.#next()
    return {
      turn,
      leave: () => {
        this.#waiting = this.#waiting.filter((one) => one !== waiting)
      },
    }
  }

  #next(): void {
    if (this.#busy.size >= this.#most) return
    const next = this.#waiting.find(({ team }) => !this.#busy.has(team))
    if (!next) return
    this.#waiting = this.#waiting.filter((one) => one !== next)
    this.#busy.add(next.team)
    let isOver = false
    next.begin(() => {
      if (isOver) return
      isOver = true
      this.#busy.delete(next.team)
      this.#next()
    })
    this.#next()
  }
}

interface Waiting {
  readonly team: string
  readonly begin: (leave: () => void) => void
}
