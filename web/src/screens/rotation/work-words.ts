/** How sure an answer is and what it is worth, in words. "Best" is said only where it is proved. */
import { counted, plural } from '@pitlamp/race'
import type { Cost, Worked, Working } from '@pitlamp/contract'

/** Laps are counted whole; below one, tenths say that there is something. */
export function lapsWords(laps: number): string {
  const size = Math.abs(laps)
  const isPart = size > 0 && size < 1
  const figure = isPart ? (Math.round(size * 10) / 10).toFixed(1) : grouped(size)
  return `${figure} ${plural(isPart ? size : Math.round(size), 'lap')}`
}

export function grouped(laps: number): string {
  return String(Math.round(laps)).replace(/\B(?=(\d{3})+$)/g, ',')
}

export function sureWords({
  as,
  proof,
  gapLaps,
}: Pick<Worked, 'as' | 'proof' | 'gapLaps'>): string {
  if (as === 'fewestChanges') {
    return proof === 'within' ? 'Whether less can change is not known.' : 'No plan changes less.'
  }
  if (proof === 'best') return 'The best these rules, wishes and shares allow.'
  if (proof === 'bestOnGrid') return 'The best with stops at these steps.'
  if (gapLaps === undefined) return 'How far it is from the best is not known.'
  return `No plan is more than ${lapsWords(Math.max(0.1, gapLaps))} better.`
}

/** Against the plan as it stands, or of two answers against the first. */
export function againstWords(against: NonNullable<Worked['against']>, other: string): string {
  const { laps, fromLaps, toLaps, noRealDifference, fairer } = against
  const fair =
    fairer === undefined
      ? ''
      : ` ${fairer === 'this' ? 'This one' : capital(other)} shares more evenly.`
  if (noRealDifference) return `No real difference in laps to ${other}.${fair}`
  const [least, most] = [Math.abs(fromLaps), Math.abs(toLaps)].sort((a, b) => a - b)
  const more = laps > 0 ? 'more' : 'fewer'
  return `${lapsWords(laps)} ${more} than ${other}, ${grouped(least ?? 0)} to ${grouped(most ?? 0)}.${fair}`
}

/** How many lines of the plan it would change. */
export function changedWords(changed: number): string {
  if (changed === 0) return 'Nothing changes.'
  return `${counted(changed, 'line')} ${plural(changed, 'is', 'are')} new.`
}

export function standingWords(standing: Working | undefined): string {
  if (!standing) return 'Waiting for the solver.'
  if (standing.on === 'why') return 'There is no such plan. Finding out why.'
  const { incumbentLaps, boundLaps } = standing
  if (incumbentLaps === undefined) return 'No plan yet.'
  const most =
    boundLaps === undefined
      ? ''
      : `, at most ${grouped(boundLaps)} ${plural(Math.round(boundLaps), 'is', 'are')} possible`
  return `The best so far is worth ${grouped(incumbentLaps)} ${plural(Math.round(incumbentLaps), 'lap')}${most}.`
}

export function costWords({ laps }: Cost): string {
  if (!laps) return 'not known'
  if (laps.most < 0.5) return 'nothing'
  if (laps.most - laps.least < 0.5) return lapsWords(laps.most)
  return `${grouped(laps.least)} to ${lapsWords(laps.most)}`
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1)
}
