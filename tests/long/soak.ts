/**
 * The demo at speed, race after race, with two screens that stay for a race and press, and viewers that come and
 * go. What a long evening does to the server's memory and to what the screens show.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join as joinPath } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { rounded, type Row } from '../bench/row.ts'
import { join, type Device } from '../device.ts'
import { startServer } from '../running-server.ts'
import { atMost, exactly } from './figures.ts'
import { watchRace, type Watched } from './soak-race.ts'

export interface Soak {
  readonly seconds: number
  /** Meeting seconds in a real second. */
  readonly speed: number
}

const VIEWERS = 6
const LATE_P99_MS = 50
const APART_MS = 100
/** A heap that grew to its working size is no leak; one that goes on growing passes this within half an hour. */
const MORE_MEMORY = 1.5
const MEMORY_MB = 200
const REPORT_WITHIN_MS = 5_000

export async function soak({ seconds, speed }: Soak): Promise<readonly Row[]> {
  const folder = mkdtempSync(joinPath(tmpdir(), 'pitlamp-soak-'))
  const file = joinPath(folder, 'report.json')
  const preload = [joinPath(import.meta.dirname, 'report-process.mjs')]
  const server = await startServer({ preload, env: { PROCESS_REPORT: file } })
  const captain = await join(server.url, await server.captainCode(), 'Wall')
  const crew = {
    wall: captain,
    phone: await captain.invite('crew', 'Phone'),
    viewers: await viewersOf(captain),
  }
  const before = await reportIn(file)
  const until = performance.now() + seconds * 1000
  const races: Watched[] = []
  while (performance.now() < until) {
    races.push(await watchRace(crew, { speed, until }))
    console.error(
      `Race ${races.length}: ${JSON.stringify({ ...races.at(-1), ...(await reportIn(file)) })}`,
    )
  }
  const after = await reportIn(file)
  await server.stop()
  rmSync(folder, { recursive: true })
  const shape = `${races.length} races at speed ${speed}, ${seconds} s`
  return [...rowsOf(races, shape), ...rowsOfProcess({ before, after }, shape)]
}

async function viewersOf(captain: Device): Promise<readonly Device[]> {
  const viewers: Device[] = []
  while (viewers.length < VIEWERS) {
    viewers.push(await captain.invite('viewer', `Viewer ${viewers.length + 1}`))
  }
  return viewers
}

function rowsOf(races: readonly Watched[], shape: string): readonly Row[] {
  const sum = (of: (race: Watched) => number) => races.reduce((total, race) => total + of(race), 0)
  const row = (name: string, value: number, unit: string) => ({
    figure: `${name} (${shape})`,
    ...{ value, unit },
  })
  const pressed = sum((race) => race.pressed)
  return [
    exactly(
      pressed,
      row(
        'acknowledged',
        sum((race) => race.acknowledged),
        'entries',
      ),
    ),
    exactly(
      0,
      row(
        'lost',
        sum((race) => race.lost),
        'entries',
      ),
    ),
    exactly(
      0,
      row(
        'doubled',
        sum((race) => race.twice),
        'entries',
      ),
    ),
    exactly(
      0,
      row(
        'presses of the demo that never came',
        sum((race) => race.missing),
        'entries',
      ),
    ),
    exactly(
      0,
      row(
        'screens with another log than the server',
        sum((race) => race.differing),
        'screens',
      ),
    ),
    exactly(
      0,
      row(
        'problems that the fold lists',
        sum((race) => race.problems),
        'problems',
      ),
    ),
    exactly(
      sum((race) => race.expectedViews),
      row(
        'viewers that came and saw',
        sum((race) => race.views),
        'viewers',
      ),
    ),
    atMost(
      APART_MS,
      row(
        'countdowns of two screens apart, worst',
        Math.max(...races.map((race) => race.apartMs)),
        'ms',
      ),
    ),
  ]
}

interface Report {
  readonly memoryMb: number
  readonly lateP99Ms: number
}

function rowsOfProcess(
  { before, after }: { before: Report; after: Report },
  shape: string,
): readonly Row[] {
  const ratio = after.memoryMb / before.memoryMb
  return [
    atMost(MEMORY_MB, {
      figure: `memory at the start (${shape})`,
      value: before.memoryMb,
      unit: 'MB',
    }),
    {
      figure: `memory at the end (baseline: at the start; ${shape})`,
      value: rounded(after.memoryMb),
      unit: 'MB',
      baseline: rounded(before.memoryMb),
      ratio: rounded(ratio),
      goal: `at most ${MORE_MEMORY} ×`,
      met: ratio <= MORE_MEMORY,
    },
    atMost(LATE_P99_MS, {
      figure: `event loop late by, p99 (${shape})`,
      value: after.lateP99Ms,
      unit: 'ms',
    }),
  ]
}

/** See report-process.mjs. */
async function reportIn(file: string): Promise<Report> {
  const until = performance.now() + REPORT_WITHIN_MS
  while (!existsSync(file)) {
    if (performance.now() > until) throw new Error('The server reports nothing of itself.')
    await sleep(50)
  }
  return JSON.parse(readFileSync(file, 'utf8')) as Report
}
