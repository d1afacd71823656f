/** Where tickets lie: in the data folder, or in the database where several processes let devices in. */
import type { Storage } from '../storage/port.ts'
import {
  dropTicket,
  readTicket,
  ticketSchema,
  TICKET_VALID_MS,
  writeTicket,
  type TicketFile,
} from './tickets.ts'
import { hashOf, newLinkCode } from './tokens.ts'

export interface TicketBox {
  /** @returns the code, which is written nowhere */
  readonly write: (ticket: Omit<TicketFile, 'validUntil'>) => Promise<string>
  /** The ticket for a code, while it is valid. */
  readonly read: (codeHash: string) => Promise<TicketFile | undefined>
  readonly drop: (codeHash: string) => Promise<void>
}

interface Given {
  readonly storage: Storage
  readonly time: { readonly now: () => number }
  readonly data: string
}

export function ticketBox({ storage, time, data }: Given): TicketBox {
  return storage.neighbours ? inDatabase(storage, time) : inFolder(data)
}

function inFolder(data: string): TicketBox {
  return {
    write: (ticket) => Promise.resolve(writeTicket(data, ticket)),
    read: (codeHash) => Promise.resolve(readTicket(data, codeHash)),
    drop(codeHash) {
      dropTicket(data, codeHash)
      return Promise.resolve()
    },
  }
}

/** Valid by server time: the processes' machines need not agree. */
function inDatabase(storage: Storage, time: Given['time']): TicketBox {
  return {
    async write(given) {
      const code = newLinkCode()
      const nowMs = time.now()
      const validUntil = Math.round(nowMs + TICKET_VALID_MS)
      const ticket = JSON.stringify({ ...given, validUntil } satisfies TicketFile)
      await storage.run('keepTicket', { codeHash: hashOf(code), ticket, validUntil, nowMs })
      return code
    },
    async read(codeHash) {
      const text = await storage.read.ticket(codeHash)
      const ticket = text === undefined ? undefined : ticketSchema.parse(JSON.parse(text))
      return ticket && ticket.validUntil > time.now() ? ticket : undefined
    },
    async drop(codeHash) {
      await storage.run('dropTicket', { codeHash })
    },
  }
}
