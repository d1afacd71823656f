/** The crew as the planner has it. */
import type { Duty, Pace, Person } from '@pitlamp/planner'
import { awayNow, type CrewMember } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import {
  FINDING_IN_LAPS,
  PACE_ASSUMED_KNOWN_TO_PER_MILLE,
  PACE_KNOWN_TO_PER_MILLE,
  SLOWER_PER_HOUR_PER_MILLE,
  SOME_LAP_MS,
} from './guesses.ts'

const DUTIES: readonly Duty[] = ['controller', 'post', 'wall', 'bench']

export function plannedPeople(ground: Ground): readonly Person[] {
  const away = awayNow(ground.state, ground.now)
  return ground.crew.people.map((member) => {
    const there = presenceOf(member, ground.isRace ? away.get(member.id) : undefined)
    return {
      id: member.id,
      duties: dutiesOf(member),
      categories: member.categories ?? [],
      ...(there.length > 0 ? { there } : {}),
      pace: paceOf(member, ground),
    }
  })
}

/** None named means all. */
function dutiesOf({ duties }: CrewMember): readonly Duty[] {
  return duties.length === 0 ? DUTIES : DUTIES.filter((one) => duties.includes(one))
}

/** Whoever named no pace is taken to be as quick as the others, and known much worse. */
export function paceOf({ paceMs }: CrewMember, ground: Ground): Pace {
  const lapMs = paceMs && paceMs > 0 ? paceMs : meanLapMs(ground)
  const known = paceMs ? PACE_KNOWN_TO_PER_MILLE : PACE_ASSUMED_KNOWN_TO_PER_MILLE
  return {
    lapMs,
    knownToMs: (lapMs * known) / 1_000,
    slowerPerHourMs: (lapMs * SLOWER_PER_HOUR_PER_MILLE) / 1_000,
    findingInLaps: FINDING_IN_LAPS,
  }
}

/** Of those whose pace is known. */
export function meanLapMs({ crew }: Pick<Ground, 'crew'>): number {
  const paces = crew.people.flatMap(({ paceMs }) => (paceMs ? [paceMs] : []))
  if (paces.length === 0) return SOME_LAP_MS
  return paces.reduce((sum, one) => sum + one, 0) / paces.length
}

interface Stretch {
  readonly fromAt?: number
  readonly toAt?: number
}

/** Nobody's day begins before this: a stretch that ends here is never. */
const NEVER: Stretch = { toAt: 0 }

/** By the crew list, less the time somebody said to be away. Empty is always. */
function presenceOf({ there = [] }: CrewMember, away: Stretch | undefined): readonly Stretch[] {
  const listed = there.map(({ fromAt, toAt }): Stretch => ({ fromAt, toAt }))
  if (!away) return listed
  const { fromAt: goes = 0, toAt: comes = Infinity } = away
  const left = (listed.length > 0 ? listed : [{}]).flatMap(({ fromAt, toAt }: Stretch) => [
    ...((fromAt ?? 0) < goes ? [{ fromAt, toAt: Math.min(toAt ?? Infinity, goes) }] : []),
    ...((toAt ?? Infinity) > comes ? [{ fromAt: Math.max(fromAt ?? 0, comes), toAt }] : []),
  ])
  return left.length > 0 ? left : [NEVER]
}
