/** One connection that is opened again whenever it is lost. */
import pg from 'pg'

const AGAIN_AFTER_MS = 250

export class Line {
  readonly #settings: pg.ClientConfig
  readonly #onOpen: (client: pg.Client) => Promise<void>
  #client: pg.Client | undefined
  #timer: NodeJS.Timeout | undefined
  #closed = false

  /** `onOpen` prepares a connection before anybody else speaks on it. */
  constructor(settings: pg.ClientConfig, onOpen: (client: pg.Client) => Promise<void>) {
    this.#settings = settings
    this.#onOpen = onOpen
  }

  /** @throws where the database cannot be reached now; nothing is tried again then */
  async open(): Promise<void> {
    const client = new pg.Client(this.#settings)
    client.on('error', () => this.#lost(client))
    client.on('end', () => this.#lost(client))
    try {
      await client.connect()
      await this.#onOpen(client)
    } catch (error) {
      end(client)
      throw error
    }
    if (this.#closed) end(client)
    else this.#client = client
  }

  /** A connection that fails to answer is given up. @throws where there is none just now */
  async query<R extends pg.QueryResultRow>(text: string, values: unknown[] = []): Promise<R[]> {
    const client = this.#client
    if (!client) throw new Error('Connection terminated')
    try {
      return (await client.query<R>(text, values)).rows
    } catch (error) {
      if (!(error instanceof pg.DatabaseError)) this.#lost(client)
      throw error
    }
  }

  async close(): Promise<void> {
    this.#closed = true
    clearTimeout(this.#timer)
    await this.#client?.end().catch(() => undefined)
  }

  #lost(client: pg.Client): void {
    if (this.#client !== client) return
    this.#client = undefined
    end(client)
    this.#again()
  }

  #again(): void {
    if (this.#closed) return
    this.#timer = setTimeout(() => {
      this.open().catch(() => this.#again())
    }, AGAIN_AFTER_MS).unref()
  }
}

/** One that has a question open is cut off. */
function end(client: pg.Client): void {
  client.end().catch(() => undefined)
}
