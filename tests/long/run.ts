/**
 * `npm run load|soak|fault [-- options]`: prints a table, with `--json` the rows as one JSON array and nothing else
 * on standard output. `--short` is what `npm test` runs. `fault --processes` is about two processes over one
 * database. Ends with 1 where a goal is missed.
 */
import { parseArgs } from 'node:util'
import type { Row } from '../bench/row.ts'
import { fault } from './fault.ts'
import { load } from './load.ts'
import { killProcesses } from '../scale/kills.ts'
import { rollOver } from '../scale/rolling.ts'
import { LONG, SHORT, type Options } from './shapes.ts'
import { soak } from './soak.ts'

const RUNS: Readonly<Record<string, Run>> = {
  load: { takes: ['devices', 'presses', 'seconds'], run: ({ load: shape }) => load(shape) },
  soak: { takes: ['minutes', 'speed'], run: ({ soak: shape }) => soak(shape) },
  fault: { takes: ['cuts', 'kills', 'seed'], run: ({ fault: shape }) => fault(shape) },
  'fault --processes': {
    takes: ['devices', 'presses', 'kills', 'rounds', 'seed'],
    run: async ({ processes: shape }) => [
      ...(await killProcesses(shape)),
      ...(await rollOver(shape)),
    ],
  },
}

interface Run {
  readonly takes: readonly string[]
  readonly run: (options: Options) => Promise<readonly Row[]>
}

const [name = '', ...all] = process.argv.slice(2)
const words = all.filter((word) => word !== '--processes')
const asked = RUNS[words.length < all.length ? `${name} --processes` : name]
if (!asked) failWith(`There are: ${Object.keys(RUNS).join(', ')}.`)
const given = read(words, asked.takes)
const rows = await asked.run(shapeOf(given))
if (given['json'] === true) console.log(JSON.stringify(rows))
else console.table(rows)
if (rows.some(({ met }) => !met)) process.exitCode = 1

type Given = Readonly<Record<string, string | boolean | undefined>>

function read(args: readonly string[], takes: readonly string[]): Given {
  const flag = { type: 'boolean', default: false } as const
  const numbers = Object.fromEntries(takes.map((one) => [one, { type: 'string' } as const]))
  try {
    return parseArgs({ args: [...args], options: { ...numbers, short: flag, json: flag } }).values
  } catch {
    return failWith(`It takes ${takes.map((one) => `--${one} N`).join(', ')}, --short and --json.`)
  }
}

function shapeOf(values: Given): Options {
  const usual = values['short'] === true ? SHORT : LONG
  const number = (option: string, otherwise: number) => {
    const text = values[option]
    const value = text === undefined ? otherwise : Number(text)
    const fits = value > 0 && (option === 'minutes' || Number.isInteger(value))
    return fits
      ? value
      : failWith(`--${option} is a ${option === 'minutes' ? '' : 'whole '}number above 0.`)
  }
  return {
    load: {
      devices: number('devices', usual.load.devices),
      presses: number('presses', usual.load.presses),
      seconds: number('seconds', usual.load.seconds),
    },
    soak: {
      seconds: number('minutes', usual.soak.seconds / 60) * 60,
      speed: number('speed', usual.soak.speed),
    },
    fault: {
      cuts: number('cuts', usual.fault.cuts),
      kills: number('kills', usual.fault.kills),
      seed: number('seed', usual.fault.seed),
    },
    processes: {
      devices: number('devices', usual.processes.devices),
      presses: number('presses', usual.processes.presses),
      kills: number('kills', usual.processes.kills),
      rounds: number('rounds', usual.processes.rounds),
      seed: number('seed', usual.processes.seed),
    },
  }
}

function failWith(sentence: string): never {
  console.error(sentence)
  process.exit(2)
}
