/**
 * Rotations worked out: named instances of `rotations/`, medians over the seeds 1 … n. `PLANNER_SEEDS` sets n, 20 by
 * itself; `PLANNER_ONLY` names the parts to run. Ratios are to the plain person-by-slot model on the same instances in
 * the same run.
 */
import loadHighs from 'highs'
import { explain, plan, replan, without, type Answer, type Problem } from '@pitlamp/planner'
import {
  chosenStops,
  colliding,
  fixedStops,
  somebodyGone,
  type Size,
} from './rotations/instance.ts'
import { solvePlain } from './rotations/plain.ts'
import { median, rounded, type Row } from './row.ts'

const SEEDS = Array.from({ length: Number(process.env['PLANNER_SEEDS'] ?? 20) }, (_, n) => n + 1)
/** Nothing here may take longer; what does is printed as what it had by then. */
const LIMIT_SECONDS = 60

const FIXED: readonly (readonly [Size, goalMs: number | null])[] = [
  [{ slots: 12, people: 4 }, null],
  [{ slots: 24, people: 6 }, null],
  [{ slots: 48, people: 8 }, 1_000],
  [{ slots: 96, people: 10 }, 2_500],
]

export async function bench(): Promise<readonly Row[]> {
  const solver = await loadHighs()
  const options = { solver, limitSeconds: LIMIT_SECONDS }
  const solved = (of: Problem) => timed(() => plan(of, options))
  const parts: Readonly<Record<string, () => readonly Row[]>> = {
    fixed: () => FIXED.flatMap(([size, goal]) => fixedRows(size, goal)),
    chosen: () =>
      [
        chosenRow({ hours: 6, people: 6 }, 8_000),
        chosenRow({ hours: 24, people: 8 }, 15_000),
      ].flat(),
    again: () => againRows(),
    collision: () => collisionRows(),
    rules: () => ruleRows(),
  }

  function fixedRows({ slots, people }: Size, goalMs: number | null): readonly Row[] {
    const all = SEEDS.map((seed) => fixedStops({ slots, people }, seed))
    const ours = all.map(solved)
    const plain = all.map((one) => timed(() => solvePlain(one, options)))
    const name = `${slots} slots × ${people} people to proof`
    return [
      timeRow(`${name} (baseline: person-by-slot model)`, { runs: ours, goalMs, plain }),
      gapRow(name, ours),
    ]
  }

  function chosenRow(of: { hours: number; people: number }, goalMs: number): readonly Row[] {
    const runs = SEEDS.map((seed) => solved(chosenStops(of, seed)))
    const name = `${of.hours} h × ${of.people} people, stops chosen on 5 min`
    return [timeRow(name, { runs, goalMs }), gapRow(name, runs)]
  }

  function againRows(): readonly Row[] {
    const runs = SEEDS.map((seed) => {
      const before = fixedStops({ slots: 48, people: 8 }, seed)
      const answer = plan(before, options)
      const spans = answer.kind === 'planned' ? answer.spans : []
      const gone = somebodyGone(before, spans)
      return timed(() => replan(gone, { spans, sameWithinMs: 0 }, options).fewestChanges)
    })
    return [timeRow('48 slots × 8 people, somebody gone: both plans', { runs, goalMs: 1_000 })]
  }

  function collisionRows(): readonly Row[] {
    const runs = SEEDS.map((seed) =>
      timed(() => explain(colliding({ slots: 24, people: 6 }, seed), options)),
    )
    return [timeRow('24 slots × 6 people, why not', { runs, goalMs: 1_500 })]
  }

  /** What each rule adds: the instance with all of them against that without the one. */
  function ruleRows(): readonly Row[] {
    const all = SEEDS.map((seed) => fixedStops({ slots: 24, people: 6 }, seed))
    const whole = all.map(solved)
    return (all[0]?.rules ?? []).map(({ id, kind }) => {
      const runs = all.map((one) => solved(without(one, [id])))
      const figure = `24 × 6 with all rules (baseline: without ${id}, ${kind})`
      return timeRow(figure, { runs: whole, goalMs: null, plain: runs })
    })
  }

  const only = process.env['PLANNER_ONLY']?.split(',') ?? Object.keys(parts)
  return only.flatMap((name) => parts[name]?.() ?? [])
}

interface Timed<T = unknown> {
  readonly ms: number
  readonly answer: T
}

function timed<T>(work: () => T): Timed<T> {
  const began = performance.now()
  const answer = work()
  return { ms: performance.now() - began, answer }
}

interface Times {
  readonly runs: readonly Timed[]
  readonly goalMs: number | null
  readonly plain?: readonly Timed[]
}

/** The worst may take three times as long as the median is to. */
function timeRow(figure: string, { runs, goalMs, plain }: Times): Row {
  const all = runs.map(({ ms }) => ms)
  const [value, worst] = [median(all), Math.max(...all)]
  const baseline = plain ? median(plain.map(({ ms }) => ms)) : null
  return {
    figure: `${figure}; worst ${rounded(worst)} ms`,
    value: rounded(value),
    unit: 'ms',
    baseline: baseline === null ? null : rounded(baseline),
    ratio: baseline === null ? null : rounded(value / baseline),
    goal: goalMs === null ? 'shown' : `at most ${goalMs}, worst ${3 * goalMs}`,
    met: goalMs === null || (value <= goalMs && worst <= 3 * goalMs),
  }
}

const MOST_GAP_LAPS = 4

function gapRow(figure: string, runs: readonly Timed<Answer>[]): Row {
  const gaps = runs.map(({ answer }) => (answer.kind === 'planned' ? answer.gapLaps : Infinity))
  const value = Math.max(...gaps)
  return {
    figure: `${figure}: furthest from the bound`,
    ...{ value: rounded(value), unit: 'laps', baseline: null, ratio: null },
    goal: `at most ${MOST_GAP_LAPS}`,
    met: value <= MOST_GAP_LAPS,
  }
}
