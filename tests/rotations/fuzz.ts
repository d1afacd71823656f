/** `npm run fuzz -- rotations`: random meetings of every size, counted, and the first that fails made small. */
import loadHighs from 'highs'
import { median, rounded, type Row } from '../bench/row.ts'
import { SIZES, type SizeName } from './meeting.ts'
import { run, type Failure, type Ran } from './run.ts'

/** Of a thousand and what goes beside them: the smallest are tried out one by one, the largest take long. */
const SHARES: Readonly<Record<SizeName, number>> = {
  '4 × 3': 200,
  '12 × 4': 900,
  '24 × 6': 100,
  '48 × 8': 20,
}

export interface Asked {
  /** Of 12 × 4 and 24 × 6 together. */
  readonly runs: number
  readonly seed: number
}

export const LONG_RUNS = 1_000
export const SHORT_RUNS = 50

export async function fuzzRotations({ runs, seed }: Asked): Promise<readonly Row[]> {
  const solver = await loadHighs()
  const names = Object.keys(SIZES) as readonly SizeName[]
  const ran = names.map((size) => {
    const count = Math.ceil((SHARES[size] * runs) / LONG_RUNS)
    console.error(`${String(count)} meetings of ${size}, seed ${String(seed)} …`)
    const onFailure = (failure: Failure) => console.error(JSON.stringify(failure))
    return run({ ...{ size, count, seed, solver }, shrink: true, onFailure })
  })
  return ran.flatMap((one) => rowsOf(one, seed))
}

function rowsOf({ size, judged, failures }: Ran, seed: number): readonly Row[] {
  const of = (said: string) => judged.filter((one) => one.said === said).length
  const counts = ['worked', 'impossible', 'stopped', 'faulty', 'thrown'].map(
    (said) => `${String(of(said))} ${said}`,
  )
  const tried = judged.filter(({ isTried }) => isTried).length
  const seconds = judged.map((one) => one.seconds)
  const all = judged.length
  return [
    row(`${size}: answers that stand (seed ${String(seed)}; ${counts.join(', ')})`, {
      ...{ value: all - failures.length, unit: 'meetings', goal: `all of ${String(all)}` },
      met: failures.length === 0,
    }),
    row(`${size}: of these with every rotation tried`, told(tried, 'meetings')),
    row(`${size}: time to an answer, median`, told(rounded(median(seconds)), 's')),
    row(`${size}: time to an answer, worst`, told(rounded(Math.max(...seconds)), 's')),
  ]
}

type Told = Pick<Row, 'value' | 'unit' | 'goal' | 'met'>

function told(value: number, unit: string): Told {
  return { value, unit, goal: 'told', met: true }
}

function row(figure: string, of: Told): Row {
  return { figure, ...of, baseline: null, ratio: null }
}
