/** What cannot hold together in rules and crew, whatever is planned. */
export interface Contradiction {
  /** Its kind and the lines concerned: the same as long as these are. */
  readonly id: string
  /** Lines of the rules. */
  readonly rules: readonly string[]
  /** A plain sentence each. */
  readonly what: string
  readonly why: string
}
