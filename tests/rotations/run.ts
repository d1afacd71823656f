/** Many random meetings worked out and judged. Meeting n of a seed is the first of seed + n, so that each can be had again. */
import fc from 'fast-check'
import { judgementOf, type Bench, type Judgement } from './judge.ts'
import { meetings, SIZES, type Meeting, type SizeName } from './meeting.ts'

export interface Wanted {
  readonly size: SizeName
  readonly count: number
  readonly seed: number
  readonly solver: Bench['solver']
  /** Of each search, as the solver counts; a larger meeting than it proves is stopped, which is no fault. */
  readonly limitSeconds?: number
  /** The first that fails is made as small as it still fails. */
  readonly shrink?: boolean
  /** Told at once, since the rest takes long. */
  readonly onFailure?: (failure: Failure) => void
}

export interface Ran {
  readonly size: SizeName
  readonly judged: readonly Judgement[]
  readonly failures: readonly Failure[]
}

export interface Failure {
  readonly size: SizeName
  readonly seed: number
  readonly wrong: readonly string[]
  readonly meeting: Meeting
}

const USUAL_SECONDS = 60
const SHRINK_MS = 120_000

export function run({ size, count, seed, solver, ...how }: Wanted): Ran {
  const { limitSeconds = USUAL_SECONDS, shrink = false, onFailure } = how
  const all: Judgement[] = []
  const failures: Failure[] = []
  for (let place = 0; place < count; place += 1) {
    // What is said of rules that collide is tried again for every second meeting.
    const bench: Bench = { solver, limitSeconds, tryWhy: place % 2 === 0 }
    const one = judgedOf(size, seed + place, { bench, shrink: shrink && failures.length === 0 })
    all.push(one.judgement)
    if (!one.failure) continue
    failures.push(one.failure)
    onFailure?.(one.failure)
  }
  return { size, judged: all, failures }
}

interface Means {
  readonly bench: Bench
  readonly shrink: boolean
}

function judgedOf(size: SizeName, seed: number, { bench, shrink }: Means) {
  const all: Judgement[] = []
  const property = fc.property(meetings(SIZES[size]), (meeting) => {
    const judgement = judged(meeting, bench)
    all.push(judgement)
    return judgement.wrong.length === 0
  })
  const ran = fc.check(property, {
    ...{ seed, numRuns: 1, endOnFailure: !shrink },
    interruptAfterTimeLimit: SHRINK_MS,
  })
  const [judgement] = all
  if (!judgement) throw new Error('Nothing was judged.', { cause: ran.errorInstance })
  const [meeting] = ran.counterexample ?? []
  if (!meeting) return { judgement }
  // The smaller ones that do not fail are tried as well: the last that does is the smallest.
  const { wrong = [] } = all.filter((one) => one.wrong.length > 0).at(-1) ?? {}
  return { judgement, failure: { size, seed, wrong, meeting } }
}

function judged(meeting: Meeting, bench: Bench): Judgement {
  try {
    return judgementOf(meeting, bench)
  } catch (error) {
    return { said: 'thrown', wrong: [String(error)], isTried: false, seconds: 0 }
  }
}
