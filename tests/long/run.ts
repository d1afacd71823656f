/**
 * `npm run load|soak|fault [-- options]`: prints a table, with `--json` the rows as one JSON array and nothing else
 * on standard output. `--short` is what `npm test` runs. Ends with 1 where a goal is missed.
 */
import { parseArgs } from 'node:util'
import type { Row } from '../bench/row.ts'
import { fault } from './fault.ts'
import { load } from './load.ts'
import { LONG, SHORT, type Options } from './shapes.ts'
import { soak } from './soak.ts'

const RUNS: Readonly<Record<string, Run>> = {
  load: { takes: ['devices', 'presses', 'seconds'], run: ({ load: shape }) => load(shape) },
  soak: { takes: ['minutes', 'speed'], run: ({ soak: shape }) => soak(shape) },
  fault: { takes: ['cuts', 'kills', 'seed'], run: ({ fault: shape }) => fault(shape) },
}

interface Run {
  readonly takes: readonly string[]
  readonly run: (options: Options) => Promise<readonly Row[]>
}

const [name = '', ...words] = process.argv.slice(2)
const asked = RUNS[name]
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
  }
}

function failWith(sentence: string): never {
  console.error(sentence)
  process.exit(2)
}
