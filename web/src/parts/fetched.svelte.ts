/**
 * A part of the program that comes after the first picture. Where the server went away before it came, whoever needs
 * it asks again.
 */
export class Fetched<Part> {
  readonly #fetch: () => Promise<Part>
  here = $state.raw<Part>()
  /** It was asked for and did not come. */
  missing = $state(false)

  constructor(fetch: () => Promise<Part>) {
    this.#fetch = fetch
  }

  readonly load = async (): Promise<void> => {
    this.here ??= await this.#fetch().catch(() => undefined)
    this.missing = this.here === undefined
  }
}
