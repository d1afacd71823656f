/**
 * Rotations worked out: named instances of `rotations/`, medians over the seeds 1 … n. `PLANNER_SEEDS` sets n, 20 by
 * itself; `PLANNER_ONLY` names the parts to run. Ratios are to the plain person-by-slot model on the same instances in
 * the same run. Two small instances are worked out before anything is timed: a solver just loaded is slower, since
 * the engine compiles it while it runs.
 */
import loadHighs from 'highs'
import { explain, plan, replan, type Answer, type Problem } from '@pitlamp/planner'
import {
  chosenStops,
  colliding,
  fixedStops,
  somebodyGone,
  type Size,
} from './rotations/instance.ts'
import { loopRows } from './rotations/loop.ts'
import { solvePlain } from './rotations/plain.ts'
import { ruleRows } from './rotations/rule-rows.ts'
import { timed, timeRow, type Timed } from './rotations/timed.ts'
import { rounded, type Row } from './row.ts'

const SEEDS = Array.from({ length: Number(process.env['PLANNER_SEEDS'] ?? 20) }, (_, n) => n + 1)
/** No single search may take longer; what does is printed as what it had by then. */
const LIMIT_SECONDS = 60
/** None of those that are timed. */
const WARM_UP_SEEDS = [-1, 0]

/** Few and not for long, so that the rules of all kinds end within minutes. */
const RULE_SEEDS = 5
const RULE_SECONDS = 20

const FIXED: readonly (readonly [Size, goalMs: number | null])[] = [
  [{ slots: 12, people: 4 }, null],
  [{ slots: 24, people: 6 }, null],
  [{ slots: 48, people: 8 }, 1_000],
  [{ slots: 96, people: 10 }, 2_500],
]

type Part = () => readonly Row[] | Promise<readonly Row[]>

export async function bench(): Promise<readonly Row[]> {
  const solver = await loadHighs()
  const options = { solver, limitSeconds: LIMIT_SECONDS }
  for (const seed of WARM_UP_SEEDS) plan(fixedStops({ slots: 24, people: 6 }, seed), options)
  const solved = (of: Problem) => timed(() => plan(of, options))
  const parts: Readonly<Record<string, Part>> = {
    fixed: () => FIXED.flatMap(([size, goal]) => fixedRows(size, goal)),
    chosen: () =>
      [
        chosenRow({ hours: 6, people: 6 }, 8_000),
        chosenRow({ hours: 24, people: 8 }, 15_000),
      ].flat(),
    again: () => againRows(),
    collision: () => collisionRows(),
    rules: () => ruleRows(SEEDS.slice(0, RULE_SEEDS), { solver, limitSeconds: RULE_SECONDS }),
    loop: () => loopRows(),
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

  const only = process.env['PLANNER_ONLY']?.split(',') ?? Object.keys(parts)
  const rows: Row[] = []
  for (const name of only) rows.push(...((await parts[name]?.()) ?? []))
  return rows
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
