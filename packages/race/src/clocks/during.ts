/** What the rules for work tell apart: when each of it was, and whether hands had to be off the car. */
import { cutOut, type Stretch } from '../checks/stretches.ts'
import type { Regulations } from '../documents/rules.ts'
import { inForce } from '../fold/in-force.ts'
import type { SegmentRun, State } from '../fold/state.ts'
import { rulesOf, type RuleOf, type RuleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { placeOf } from '../time/programme.ts'
import { betweenKind, phaseOf } from './phase.ts'

export type During = RuleValue<'workAllowed'>['during']

interface DuringSpan extends Stretch {
  readonly during: During
}

/** The rule for work in this phase; undefined where none speaks of it. */
export function workRule(
  regulations: Regulations | undefined,
  during: During,
): RuleOf<'workAllowed'> | undefined {
  return rulesOf(regulations?.rules ?? [], 'workAllowed').find(
    ({ value }) => value.during === during,
  )
}

/** A break is parc fermé where the rules speak of parc fermé and not of breaks. */
export function breakOrParcFerme(regulations: Regulations | undefined): 'break' | 'parcFerme' {
  if (workRule(regulations, 'break')) return 'break'
  return workRule(regulations, 'parcFerme') ? 'parcFerme' : 'break'
}

/** Within a stretch of meeting time, for how long hands had to be off the car; where no rule says so, never. */
export function handsOffMs(state: State, stretch: Stretch): number {
  let sum = 0
  for (const span of duringSpans(state, stretch.toAt)) {
    const fromAt = Math.max(span.fromAt, stretch.fromAt)
    const toAt = Math.min(span.toAt, stretch.toAt)
    if (toAt <= fromAt) continue
    const rule = workRule(inForce(state, 'rules', span.fromAt), span.during)
    if (known(rule?.value.allowed) === false) sum += toAt - fromAt
  }
  return sum
}

/** From the first green until `now`. Nothing once the car is released. */
function duringSpans(state: State, now: number): readonly DuringSpan[] {
  const { runs, interruptions } = state.raceControl
  const off = interruptions.map(({ cause, fromAt, toAt }) => ({
    during: cause,
    fromAt,
    toAt: toAt ?? now,
  }))
  const green = runs.flatMap(({ greenAt, endAt }) =>
    cutOut({ fromAt: greenAt, toAt: endAt ?? now }, off).map((piece) => ({
      during: 'green' as const,
      ...piece,
    })),
  )
  const between = runs.flatMap((run, place) => {
    const { endAt } = run
    if (endAt === undefined) return []
    return [betweenSpan(state, run, { fromAt: endAt, toAt: runs[place + 1]?.greenAt ?? now })]
  })
  return [...green, ...off, ...between]
}

function betweenSpan(state: State, run: SegmentRun, { fromAt, toAt }: Stretch): DuringSpan {
  const { releasedAt } = state.raceControl
  const isLast = run === state.raceControl.runs.at(-1)
  if (isLast && phaseOf(state, toAt).phase === 'finished') {
    return { during: 'parcFerme', fromAt, toAt: Math.min(releasedAt ?? toAt, toAt) }
  }
  const regulations = inForce(state, 'rules', fromAt)
  const kind = betweenKind(regulations?.programme ?? [], placeOf(state, run, fromAt))
  return { during: kind === 'break' ? breakOrParcFerme(regulations) : kind, fromAt, toAt }
}
