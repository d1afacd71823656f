/** `npm run invite -- captain`: beside a running server or without one, by a ticket in the data folder. */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as z from 'zod/mini'
import { addressesOf } from '../addresses.ts'
import { BadOption, type Config } from '../config.ts'
import { printLinks, type Terminal } from './captain.ts'
import { writeTicket } from './tickets.ts'

const addressesSchema = z.array(z.string())

export async function inviteCaptain(
  who: string | undefined,
  config: Config,
  out: Terminal,
): Promise<void> {
  if (who !== 'captain') throw new BadOption('Say whom to invite: npm run invite -- captain')
  if (!existsSync(join(config.data, 'pitlamp.db'))) {
    throw new BadOption(`There is no team yet in ${config.data}. Start Pitlamp first: npm start`)
  }
  const code = writeTicket(config.data, { simulator: false, onlyWithoutCaptain: false })
  out.write('\nOpen this on the captain’s device within half an hour; it works once.\n')
  await printLinks(runningAddresses(config), code, out)
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
