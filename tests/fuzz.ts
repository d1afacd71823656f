/**
 * `npm run fuzz [-- network|rotations --seed S --short --json]`: random tests, many more than `npm test` runs;
 * screens over a network without a name. `network` takes `--schedules N`, `rotations` `--runs N`. Prints a table, with
 * `--json` the rows as one JSON array and nothing else on standard output. Ends with 1 where something failed.
 */
import { parseArgs } from 'node:util'
import type { Row } from './bench/row.ts'
import { fuzzNetwork, LONG_SCHEDULES, SHORT_SCHEDULES } from './network/fuzz.ts'
import { fuzzRotations, LONG_RUNS, SHORT_RUNS } from './rotations/fuzz.ts'

interface Fuzz {
  /** The option that says how many. */
  readonly counts: string
  readonly long: number
  readonly short: number
  readonly run: (count: number, seed: number) => Promise<readonly Row[]>
}

const FUZZ: Readonly<Record<string, Fuzz>> = {
  network: {
    ...{ counts: 'schedules', long: LONG_SCHEDULES, short: SHORT_SCHEDULES },
    run: (schedules, seed) => fuzzNetwork({ schedules, seed }),
  },
  rotations: {
    ...{ counts: 'runs', long: LONG_RUNS, short: SHORT_RUNS },
    run: (runs, seed) => fuzzRotations({ runs, seed }),
  },
}

const words = process.argv.slice(2)
const isNamed = words[0] !== undefined && !words[0].startsWith('--')
const asked = FUZZ[(isNamed ? words.shift() : undefined) ?? 'network']
if (!asked) failWith(`There are: ${Object.keys(FUZZ).join(', ')}.`)
const given = read(words, asked)
const count = wholeOf(given, asked.counts) ?? (given['short'] ? asked.short : asked.long)
const rows = await asked.run(count, wholeOf(given, 'seed') ?? Date.now() % 2_147_483_647)
if (given['json']) console.log(JSON.stringify(rows))
else console.table(rows)
if (rows.some(({ met }) => !met)) process.exitCode = 1

type Given = Readonly<Record<string, string | boolean | undefined>>

function read(args: readonly string[], { counts }: Fuzz): Given {
  const number = { type: 'string' } as const
  const flag = { type: 'boolean', default: false } as const
  const options = { [counts]: number, seed: number, short: flag, json: flag }
  try {
    return parseArgs({ args: [...args], options }).values
  } catch {
    return failWith(`It takes --${counts} N, --seed S, --short and --json.`)
  }
}

function wholeOf(values: Given, option: string): number | undefined {
  const text = values[option]
  if (text === undefined) return undefined
  const value = Number(text)
  return Number.isInteger(value) && value > 0
    ? value
    : failWith(`--${option} is a whole number above 0.`)
}

function failWith(sentence: string): never {
  console.error(sentence)
  process.exit(2)
}
