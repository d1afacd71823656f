/**
 * The operator's way in. Whoever may write the data folder may let in a captain: a ticket is a small file
 * there, named by the hash of its code and readable by its owner only. It is made at a start without a
 * captain, by `npm run invite`, beside a running server or without one, and for the simulator. It works once
 * (the store remembers) and for half an hour by the machine's clock, by which it was made.
 */
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import * as z from 'zod/mini'
import { hashOf, newLinkCode } from './tokens.ts'

export const TICKET_VALID_MS = 1_800_000

export const ticketSchema = z.strictObject({
  validUntil: z.int(),
  simulator: z.boolean(),
  onlyWithoutCaptain: z.boolean(),
  /** Whose captain; the first team's where it names none. */
  team: z.optional(z.string()),
  /** The same by name; where no team has this name yet, the captain's joining founds it. */
  teamName: z.optional(z.string()),
})
export type TicketFile = z.infer<typeof ticketSchema>

/** @returns the code, which is written nowhere */
export function writeTicket(data: string, ticket: Omit<TicketFile, 'validUntil'>): string {
  const code = newLinkCode()
  const folder = folderOf(data)
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  dropOld(data)
  const content: TicketFile = { ...ticket, validUntil: Date.now() + TICKET_VALID_MS }
  writeFileSync(fileOf(data, hashOf(code)), JSON.stringify(content), { mode: 0o600, flag: 'wx' })
  return code
}

/** The ticket for a code, while it is valid. */
export function readTicket(data: string, codeHash: string): TicketFile | undefined {
  const ticket = parse(fileOf(data, codeHash))
  return ticket && ticket.validUntil > Date.now() ? ticket : undefined
}

export function dropTicket(data: string, codeHash: string): void {
  rmSync(fileOf(data, codeHash), { force: true })
}

function dropOld(data: string): void {
  for (const name of readdirSync(folderOf(data))) {
    const file = join(folderOf(data), name)
    const ticket = parse(file)
    if (!ticket || ticket.validUntil <= Date.now()) rmSync(file, { force: true })
  }
}

function parse(file: string): TicketFile | undefined {
  try {
    return ticketSchema.parse(JSON.parse(readFileSync(file, 'utf8')))
  } catch {
    return undefined
  }
}

function folderOf(data: string): string {
  return join(data, 'tickets')
}

function fileOf(data: string, codeHash: string): string {
  return join(folderOf(data), `${codeHash}.json`)
}
