/** While no captain's device exists, the start lets one in: on a terminal by link and QR, else by a file of the owner's. */
import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Deps } from '../deps.ts'

export interface Terminal {
  readonly isTTY?: boolean
  readonly write: (text: string) => unknown
}

export async function inviteFirstCaptain(deps: Deps, out: Terminal): Promise<void> {
  const file = join(deps.data, 'captain-code')
  rmSync(file, { force: true })
  if (await deps.storage.read.hasCaptain(deps.team)) return
  const code = await deps.tickets.write({ simulator: false, onlyWithoutCaptain: true })
  if (out.isTTY === true) {
    out.write(
      '\nThere is no captain yet. Open this on the captain’s device within half an hour; it works once.\n',
    )
    await printLinks(deps.addresses(), code, out)
    return
  }
  writeFileSync(file, `${code}\n`, { mode: 0o600, flag: 'wx' })
  out.write(
    `There is no captain yet. The captain’s code is in ${file}: open …/join#CODE within half an hour.\n`,
  )
}

/** The same code at every address, and a QR for the first of them where there is a terminal to draw on. */
export async function printLinks(
  addresses: readonly string[],
  code: string,
  out: Terminal,
): Promise<void> {
  const links = addresses.map((address) => `${address}/join#${code}`)
  out.write(`\n${links.map((link) => `  ${link}\n`).join('')}\n`)
  const [first] = links
  if (out.isTTY !== true || first === undefined) return
  const { qrForTerminal } = await import('./terminal-qr.ts')
  out.write(qrForTerminal(first))
}
