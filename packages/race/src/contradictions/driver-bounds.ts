/** How long one driver must and may drive in the whole race, from every rule that says so. */
import { shareDown, shareUp } from '../checks/driving/shares.ts'
import type { CrewMember } from '../documents/crew.ts'
import { rulesOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { hasCategory, type Ground } from './ground.ts'

export interface Bound {
  readonly ms: number
  readonly rules: readonly string[]
}

interface DriverBounds {
  /** 0 without a rule. */
  readonly least: Bound
  /** Infinity without a rule. */
  readonly most: Bound
}

/** Somebody the crew list does not have yet is of no category. */
export type Driver = Pick<CrewMember, 'categories'>

export function boundsOfDriver(ground: Ground, driver: Driver): DriverBounds {
  const said = [
    ...times(ground, driver),
    ...shares(ground, driver),
    ...stints(ground, driver, 'atLeast'),
    ...stints(ground, driver, 'atMost'),
  ]
  let least: Bound = { ms: 0, rules: [] }
  let most: Bound = { ms: Infinity, rules: [] }
  for (const { sense, ...bound } of said) {
    if (sense === 'atLeast' && bound.ms > least.ms) least = bound
    if (sense === 'atMost' && bound.ms < most.ms) most = bound
  }
  return { least, most }
}

interface SaidBound extends Bound {
  readonly sense: 'atLeast' | 'atMost'
}

function times({ rules }: Ground, driver: Driver): readonly SaidBound[] {
  return about(rulesOf(rules, 'drivingTime'), driver).flatMap(({ id, value }) => [
    ...said('atLeast', known(value.atLeastMs), [id]),
    ...said('atMost', known(value.atMostMs), [id]),
  ])
}

function shares({ rules, raceMs }: Ground, driver: Driver): readonly SaidBound[] {
  if (raceMs === undefined) return []
  return about(rulesOf(rules, 'drivingShare'), driver)
    .filter(({ value }) => raceMs > (value.longerThanMs ?? 0))
    .flatMap(({ id, value }) => {
      const [least, most] = [known(value.atLeast), known(value.atMost)]
      return [
        ...said('atLeast', least === undefined ? least : shareUp(raceMs, least), [id]),
        ...said('atMost', most === undefined ? most : shareDown(raceMs, most), [id]),
      ]
    })
}

/** So many stints of such a length. */
function stints(
  { rules }: Ground,
  driver: Driver,
  sense: SaidBound['sense'],
): readonly SaidBound[] {
  const part = sense === 'atLeast' ? 'atLeastMs' : 'atMostMs'
  return about(rulesOf(rules, 'stintsEach'), driver).flatMap((number) =>
    about(rulesOf(rules, 'continuousDriving'), driver).flatMap((length) => {
      const [count, ms] = [known(number.value[sense]), known(length.value[part])]
      const product = count === undefined || ms === undefined ? undefined : count * ms
      return said(sense, product, [number.id, length.id])
    }),
  )
}

interface AboutDrivers {
  readonly value: { readonly who?: string }
}

function about<R extends AboutDrivers>(rules: readonly R[], driver: Driver): readonly R[] {
  return rules.filter(({ value: { who } }) => who === undefined || hasCategory(driver, who))
}

function said(
  sense: SaidBound['sense'],
  ms: number | undefined,
  rules: readonly string[],
): readonly SaidBound[] {
  return ms === undefined ? [] : [{ sense, ms, rules }]
}
