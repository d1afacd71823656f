/** Everything on the wall that could ask for a look. */
import type { Obligation } from '@pitlamp/race'
import type { LampClaim } from '../../parts/lamp.ts'
import type { CallShown, ObligationShown, StintShown } from '../../parts/shown.ts'
import type { OpenFault } from './faults.ts'

interface Parts {
  readonly card: ObligationShown | undefined
  readonly obligations: readonly Obligation[]
  readonly stint: StintShown
  readonly calls: readonly CallShown[]
  /** Undefined while nobody is to read the hall's clock. */
  readonly askClockAt: number | undefined
  readonly faults: readonly OpenFault[]
}

export function lampClaims(parts: Parts): readonly LampClaim[] {
  const { card, obligations, stint, calls, askClockAt, faults } = parts
  const dueOf = (id: string) => obligations.find((one) => one.id === id)?.dueAt ?? 0
  const stintEnd = obligations.find(({ kind }) => kind === 'stintEnd')
  return [
    // A stop that ends the stint comes before it: it says what to do.
    ...(card ? [{ part: `due ${card.id}`, urgency: card.urgency, dueAt: dueOf(card.id) }] : []),
    { part: 'stint', urgency: stint.urgency, dueAt: stintEnd?.dueAt ?? 0 },
    ...calls
      .filter(({ ahead }) => !ahead)
      .map(({ id, calledAt }) => ({
        part: `call ${id}`,
        urgency: 'soon' as const,
        dueAt: calledAt,
      })),
    ...(askClockAt === undefined
      ? []
      : [{ part: 'clock', urgency: 'soon' as const, dueAt: askClockAt }]),
    ...faults.map(({ id, repairing, urgency, dueAt }) => ({
      part: `fault ${id}`,
      // Somebody is at it already: what it costs is said, nobody has to be called to it.
      urgency: repairing ? ('calm' as const) : urgency,
      dueAt,
      waiting: !repairing,
    })),
  ]
}

/** What comes first where everything stands in one column: whatever has the lamp for a limit or a countdown. */
export function firstInOneColumn(
  lit: string | undefined,
  faults: readonly OpenFault[],
): 'stint' | 'due' | 'faults' {
  if (faults.some(({ id, urgency }) => lit === `fault ${id}` && urgency !== 'calm')) return 'faults'
  return lit?.startsWith('due ') === true || lit?.startsWith('call ') === true ? 'due' : 'stint'
}
