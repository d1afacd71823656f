/** From the command line to a running house, and back to nothing. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import type { DemoOf } from '@pitlamp/contract'
import { inviteFirstCaptain, type Terminal } from './access/captain.ts'
import { addressFile, inviteCaptain } from './access/invite-command.ts'
import { NotDone } from './backup/not-done.ts'
import { BadOption, readConfig, USAGE, type Config } from './config.ts'
import type { OpenDemo } from './deps.ts'
import { openHouse, type House, type HouseOptions } from './open-house.ts'
import { NotSaved, OutOfReach, StoreInUse } from './storage/port.ts'

/** What can be said instead of options first; each takes one word after it. */
type RunCommand = (word: string | undefined, config: Config, out: Terminal) => Promise<void>
const COMMANDS: Readonly<Record<string, RunCommand>> = {
  invite: inviteCaptain,
  backup: async (...given) => (await import('./backup/backup-command.ts')).backUp(...given),
  restore: async (...given) => (await import('./backup/restore-command.ts')).restore(...given),
}

const BAD_OPTION = 2
const DID_NOT_START = 1

/** `forTests` weakens the store: only the programs of tests hand it over. */
export async function run(
  argv: readonly string[],
  forTests?: HouseOptions['forTests'],
): Promise<void> {
  try {
    const command = COMMANDS[argv[0] ?? '']
    const word = command && !argv[1]?.startsWith('--') ? argv[1] : undefined
    const options = argv.slice((command ? 1 : 0) + (word === undefined ? 0 : 1))
    const config = readConfig(options, process.env)
    if (config === 'help') console.log(USAGE)
    else if (command) await command(word, config, process.stdout)
    else await serve(config, forTests)
  } catch (error) {
    console.error(sentenceFor(error))
    process.exit(error instanceof BadOption ? BAD_OPTION : DID_NOT_START)
  }
}

async function serve(config: Config, forTests: HouseOptions['forTests']): Promise<void> {
  const { publicUrl, ...rest } = config
  const names = publicUrl === undefined ? {} : { publicUrl }
  mkdirSync(config.data, { recursive: true })
  const house = await openHouse({ ...rest, names, openDemo, ...(forTests && { forTests }) })
  endOnSignal(house)
  const addresses = house.deps.addresses()
  writeFileSync(addressFile(config.data), JSON.stringify(addresses))
  console.log(`Pitlamp is ready:\n${addresses.map((address) => `  ${address}`).join('\n')}`)
  await inviteFirstCaptain(house.deps, process.stdout)
  const { demo, demoOf = 'digital' } = config
  if (demo !== undefined) await openDemoAtStart(house, demo, demoOf)
}

const openDemo: OpenDemo = async (at) => (await import('./simulator/demo.ts')).openDemo(at)

async function openDemoAtStart({ deps }: House, rate: number, of: DemoOf): Promise<void> {
  const { runDemo } = await import('./resources/demo.ts')
  const { meeting } = await runDemo(deps, openDemo, { rate, of, team: deps.team })
  console.log(
    `The demo runs, ${String(rate)} times as fast: ${deps.addresses()[0] ?? ''}/meetings/${meeting}/wall`,
  )
}

function endOnSignal(house: House): void {
  let ending = false
  const end = () => {
    if (ending) return
    ending = true
    rmSync(addressFile(house.deps.data), { force: true })
    house.close().then(
      () => process.exit(0),
      (error: unknown) => {
        console.error(error)
        process.exit(DID_NOT_START)
      },
    )
  }
  process.on('SIGTERM', end)
  process.on('SIGINT', end)
}

function isSentence(error: unknown): error is Error {
  return [BadOption, StoreInUse, NotDone].some((kind) => error instanceof kind)
}

function sentenceFor(error: unknown): unknown {
  if (isSentence(error)) return error.message
  const { code, port, path } = error as { code?: string; port?: number; path?: string }
  const why = error instanceof NotSaved ? error.message : code
  if (error instanceof OutOfReach) {
    return `The database cannot be reached (${error.why}), so Pitlamp cannot start. Is it running, and is --database its address?`
  }
  if (error instanceof NotSaved || /^(ENOSPC|SQLITE_FULL|SQLITE_IOERR.*)$/.test(code ?? '')) {
    return `The disk takes nothing (${String(why)}), so Pitlamp cannot start. Make room on it, or choose another with --data.`
  }
  if (code === 'EADDRINUSE') {
    return `Port ${String(port)} is taken by another program. Choose another with --port, or 0 for any free one.`
  }
  if (code === 'EACCES' || code === 'SQLITE_READONLY' || code === 'SQLITE_CANTOPEN') {
    return `The data folder cannot be written${path === undefined ? '' : ` (${path})`}. Choose another with --data.`
  }
  return error
}
