/**
 * What every kind of rule adds to the time, a row each: the same race with one typical rule and without any of it,
 * in processor time.
 */
import { plan, type Answer, type Problem, type Rule, type SolveOptions } from '@pitlamp/planner'
import { median, type Row } from '../row.ts'
import { EXAMPLES, RACES, type Race } from './rule-examples.ts'
import { processorTimed, timeRow, type Timed } from './timed.ts'

/** The baseline of a rule that the race has none of by itself is the race as it is: it is worked out once. */
export function ruleRows(seeds: readonly number[], options: SolveOptions): readonly Row[] {
  const solved = new Map<string, Timed<Answer>>()
  const solve = (race: Race, problem: Problem) => {
    const name = `${race} ${JSON.stringify(problem)}`
    const one = solved.get(name) ?? processorTimed(() => plan(problem, options))
    solved.set(name, one)
    return one
  }
  return KINDS.map((kind) => {
    const { race, rule } = EXAMPLES[kind]
    const runs = seeds.map((seed) => {
      const whole = RACES[race].problem(seed)
      const without = { ...whole, rules: whole.rules.filter((one) => one.kind !== kind) }
      const rules = [...without.rules, { ...rule, kind, id: kind } as Rule]
      return { plain: solve(race, without), with: solve(race, { ...without, rules }) }
    })
    return ruleRow(`${kind}, ${RACES[race].name}`, runs)
  })
}

const KINDS = Object.keys(EXAMPLES) as readonly Rule['kind'][]

interface Pair {
  readonly plain: Timed<Answer>
  readonly with: Timed<Answer>
}

/** Every one of them has to be proved: the time to a limit says nothing. */
function ruleRow(name: string, runs: readonly Pair[]): Row {
  const adds = Math.round(median(runs.map((one) => one.with.ms - one.plain.ms)))
  const figure = `${name}: adds ${adds} ms of processor time (baseline: without any)`
  const times = { runs: runs.map((one) => one.with), plain: runs.map(({ plain }) => plain) }
  const all = [...times.runs, ...times.plain]
  const isProved = ({ answer }: Timed<Answer>) =>
    answer.kind === 'planned' && answer.proof !== 'within'
  const open = all.filter((one) => !isProved(one)).length
  const row = timeRow(figure, { ...times, goalMs: null })
  if (open === 0) return row
  return { ...row, goal: `all proved; ${open} of ${all.length} are not`, met: false }
}
