/** `npm run invite -- captain [--team NAME]`: beside a running server or without one, by a ticket in the data folder. */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as z from 'zod/mini'
import { addressesOf } from '../addresses.ts'
import { BadOption, type Config } from '../config.ts'
import { printLinks, type Terminal } from './captain.ts'
import { ticketBox } from './ticket-box.ts'
import { writeTicket, type TicketFile } from './tickets.ts'

const addressesSchema = z.array(z.string())

export async function inviteCaptain(
  who: string | undefined,
  config: Config,
  out: Terminal,
): Promise<void> {
  if (who !== 'captain') throw new BadOption('Say whom to invite: npm run invite -- captain')
  const { team: teamName } = config
  const ticket = { simulator: false, onlyWithoutCaptain: false }
  const code = await write(config, { ...ticket, ...(teamName !== undefined && { teamName }) })
  out.write('\nOpen this on the captain’s device within half an hour; it works once.\n')
  await printLinks(runningAddresses(config), code, out)
}

async function write(config: Config, ticket: Omit<TicketFile, 'validUntil'>): Promise<string> {
  const { data, database } = config
  if (database !== undefined) return writeInto(database, data, ticket)
  if (!existsSync(join(data, 'pitlamp.db'))) {
    throw new BadOption(`There is no team yet in ${data}. Start Pitlamp first: npm start`)
  }
  return writeTicket(data, ticket)
}

async function writeInto(
  database: string,
  data: string,
  ticket: Omit<TicketFile, 'validUntil'>,
): Promise<string> {
  const { openStore } = await import('../open-store.ts')
  const opened = await openStore({ data, database })
  try {
    if ((await opened.storage.read.firstTeam()) === undefined) {
      throw new BadOption('There is no team yet in this database. Start Pitlamp first: npm start')
    }
    return await ticketBox({ ...opened, data }).write(ticket)
  } finally {
    await opened.storage.close()
  }
}

export function addressFile(data: string): string {
  return join(data, 'addresses.json')
}

/** As the running server wrote them down, or as one would have them that is started with the same options. */
function runningAddresses(config: Config): readonly string[] {
  try {
    return addressesSchema.parse(JSON.parse(readFileSync(addressFile(config.data), 'utf8')))
  } catch {
    return addressesOf(config)
  }
}
