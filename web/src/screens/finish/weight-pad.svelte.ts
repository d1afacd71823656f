/** A weight typed on the pad, in tenths of a gram as most scales show them: `1` `2` `3` `4` reads 123.4 g. */

const MOST_DIGITS = 6

export class WeightPad {
  #digits = $state('')

  readonly digit = (typed: string): void => {
    this.#digits = (this.#digits + typed).replace(/^0+/, '').slice(0, MOST_DIGITS)
  }

  readonly back = (): void => {
    this.#digits = this.#digits.slice(0, -1)
  }

  clear(): void {
    this.#digits = ''
  }

  get text(): string {
    const digits = this.#digits.padStart(2, '0')
    return `${digits.slice(0, -1)}.${digits.slice(-1)}`
  }

  /** Thousandths of a gram; undefined while nothing is typed. */
  get milli(): number | undefined {
    return this.#digits === '' ? undefined : Number(this.#digits) * 100
  }
}
