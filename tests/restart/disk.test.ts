/**
 * A disk that takes nothing, and a data folder that is taken.
 *
 * D1  While the disk is full, read-only or failing, nothing is acknowledged: the answer is `notSaved`, the
 *     entry stays on its device, and /readyz says so.
 * D2  As soon as it takes something again, everything that waited is saved, once.
 * D3  A start on such a disk ends with a sentence for the operator, and the next one finds everything there.
 * D4  A second process on the same data folder refuses to start and says why; the first goes on.
 */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join as joinPath } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { join, Refused } from '../device.ts'
import { compile } from '../power/compile.ts'
import { startServer, type RunningServer } from '../running-server.ts'
import { Screen } from '../screen.ts'
import { makeMeeting } from './race.ts'

const TIME_MS = 120_000
const compiled = compile(joinPath(import.meta.dirname, 'failing-disk.c'))

describe('a disk that takes nothing', () => {
  it.for([
    { how: 'full', says: 'write 28' },
    { how: 'read-only', says: 'write 30' },
    { how: 'failing', says: 'sync 5' },
  ])('D1, D2: $how', { timeout: TIME_MS }, async ({ says }, { skip }) => {
    if ('reason' in compiled) return skip(compiled.reason)
    const { data, orders, options } = newDisk(compiled.library)
    const server = await startServer(options)
    await savesNothingWhile(server, {
      refuse: () => writeFileSync(orders, says),
      takeAgain: () => rmSync(orders),
    })
    rmSync(data, { recursive: true })
  })

  it('D3: at a start', { timeout: TIME_MS }, async ({ skip }) => {
    if ('reason' in compiled) return skip(compiled.reason)
    const { data, orders, options } = newDisk(compiled.library)
    const server = await startServer(options)
    const captain = await join(server.url, await server.captainCode(), 'Captain')
    const meeting = await makeMeeting(captain)
    await server.kill()
    writeFileSync(orders, 'write 28')
    await expect(startServer(options)).rejects.toThrow('The disk takes nothing')
    rmSync(orders)
    const again = await startServer({ ...options, port: server.port })
    expect(await captain.call('GET', `/api/meetings/${meeting}`)).toMatchObject({ id: meeting })
    await again.stop()
    rmSync(data, { recursive: true })
  })

  it('D1, D2: at the size a file may have', { timeout: TIME_MS }, async ({ skip }) => {
    if (process.platform !== 'linux') return skip('Only Linux can limit a process that runs.')
    const server = await startServer()
    const limit = (bytes: number | 'unlimited') =>
      execFileSync('prlimit', [`--pid=${server.pid}`, `--fsize=${bytes}:unlimited`])
    await savesNothingWhile(server, {
      refuse: () => limit(largestFile(server.data)),
      takeAgain: () => limit('unlimited'),
    })
  })
})

/** A data folder on a disk that refuses what the file `orders` says. */
function newDisk(library: string) {
  const data = mkdtempSync(joinPath(tmpdir(), 'pitlamp-'))
  const orders = `${data}.says`
  const env = { FAILING_DISK_DATA: data, FAILING_DISK_SAYS: orders }
  return { data, orders, options: { data, env, preload: [library] } }
}

interface Disk {
  readonly refuse: () => void
  readonly takeAgain: () => void
}

async function savesNothingWhile(server: RunningServer, disk: Disk): Promise<void> {
  const captain = await join(server.url, await server.captainCode(), 'Captain')
  const meeting = await makeMeeting(captain)
  const wall = await new Screen(captain, meeting).live()
  const first = wall.press('note.1', { words: 'There is room' })
  await wall.until('the first to be saved', () => wall.saved(first) === 'saved')

  disk.refuse()
  const kept = Array.from({ length: 60 }, (_, index) =>
    wall.press('note.1', { words: `${index} ${'x'.repeat(1900)}` }),
  )
  await wall.until('a refusal', () => wall.sync.pausing.sending)
  await sleep(500)
  expect(wall.saved(kept.at(-1) ?? first)).toBe('keptOnThisDevice')
  const ready = await fetch(`${server.url}/readyz`)
  expect(ready.status).toBe(503)
  expect(JSON.stringify(await ready.json())).toMatch(/disk|written|write/)
  const path = `/api/meetings/${meeting}/entries`
  const again = captain.call('POST', path, { meeting, entries: [kept.at(-1)] })
  await expect(again).rejects.toSatisfy(
    (error) => error instanceof Refused && error.problem.refusal === 'notSaved',
  )

  disk.takeAgain()
  await wall.until('all to be saved', () => kept.every((entry) => wall.saved(entry) === 'saved'))
  expect((await fetch(`${server.url}/readyz`)).status).toBe(200)
  const tablet = await new Screen(await captain.invite('pitWall', 'Tablet'), meeting).live()
  expect(tablet.sync.confirmed.map(({ id }) => id).sort()).toEqual(
    [first, ...kept].map(({ id }) => id).sort(),
  )
  for (const screen of [wall, tablet]) screen.close()
  await server.stop()
}

function largestFile(folder: string): number {
  return Math.max(...readdirSync(folder).map((name) => statSync(joinPath(folder, name)).size))
}

describe('a data folder that is taken', () => {
  it(
    'D4: is refused to a second process, and the first goes on',
    { timeout: TIME_MS },
    async () => {
      const server = await startServer()
      await expect(startServer({ data: server.data })).rejects.toThrow(
        'Another Pitlamp is already running on',
      )
      const captain = await join(server.url, await server.captainCode(), 'Captain')
      await expect(makeMeeting(captain)).resolves.toBeTypeOf('string')
      await server.stop()
    },
  )
})
