/** A result typed on the pad: place, whole laps and track section, each a whole number of its own. */
import type { Body } from '@pitlamp/race'

export const FIELDS = ['place', 'laps', 'section'] as const
export type Field = (typeof FIELDS)[number]

export type Line = Pick<Body<'classification.1'>['lines'][number], 'place' | 'laps' | 'section'>

const MOST_DIGITS = { place: 3, laps: 6, section: 4 } as const satisfies Record<Field, number>

export class ResultPad {
  field = $state<Field>('place')
  #digits = $state.raw<Readonly<Record<Field, string>>>({ place: '', laps: '', section: '' })
  /** What was typed replaces what was filled in. */
  #fresh = true

  /** Fills in what was read before. */
  fill({ place, laps, section }: Line): void {
    this.#digits = {
      place: String(place),
      laps: String(laps),
      section: section === undefined ? '' : String(section),
    }
    this.choose('place')
  }

  choose(field: Field): void {
    this.field = field
    this.#fresh = true
  }

  readonly digit = (typed: string): void => {
    const before = this.#fresh ? '' : this.#digits[this.field]
    const digits = (before + typed).replace(/^0+(?=\d)/, '').slice(0, MOST_DIGITS[this.field])
    this.#digits = { ...this.#digits, [this.field]: digits }
    this.#fresh = false
  }

  readonly back = (): void => {
    this.#digits = { ...this.#digits, [this.field]: this.#digits[this.field].slice(0, -1) }
    this.#fresh = false
  }

  shown(field: Field): string {
    return this.#digits[field]
  }

  /** Undefined until there are a place from 1 and laps; without a section only the laps are known. */
  readonly line = $derived.by((): Line | undefined => {
    const { place, laps, section } = this.#digits
    if (place === '' || Number(place) === 0 || laps === '') return undefined
    const line = { place: Number(place), laps: Number(laps) }
    return section === '' ? line : { ...line, section: Number(section) }
  })
}
