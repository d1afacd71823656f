/** Whose hands are free for the work of a stop: at the bench, or here and off duty. */
import { dutiesNow, type CrewMember, type Move, type State } from '@pitlamp/race'
import type { Seen } from '../wall/people.ts'

interface FreeHands {
  readonly person: string
  readonly name: string
  readonly bench: boolean
}

/**
 * The bench first. Whoever said nothing is here while the crew's list has them there; whoever is about to take the
 * controller or a post with this stop has no hand to spare.
 */
export function freeHands(
  { state, now, crew }: Seen,
  moves: readonly Move[],
): readonly FreeHands[] {
  const wanted = new Set(
    moves.filter(({ duty }) => duty === 'controller' || duty === 'post').map((move) => move.person),
  )
  const dutyOf = new Map(dutiesNow(state).map(({ person, duty }) => [person, duty]))
  return crew.people
    .filter((member) => !wanted.has(member.id) && isHere(state, member, now))
    .map(({ id, name }) => ({ person: id, name, duty: dutyOf.get(id) ?? 'offDuty' }))
    .filter(({ duty }) => duty === 'bench' || duty === 'offDuty')
    .map(({ person, name, duty }) => ({ person, name, bench: duty === 'bench' }))
    .sort((a, b) => Number(b.bench) - Number(a.bench))
}

export function freeHandsWords(free: readonly FreeHands[]): string {
  if (free.length === 0) return 'Nobody has their hands free.'
  const names = free.map(({ name, bench }) => (bench ? `${name} at the bench` : name))
  const last = names.pop() ?? ''
  const all = names.length === 0 ? last : `${names.join(', ')} and ${last}`
  return `Hands free: ${all}`
}

function isHere(state: State, { id, there }: CrewMember, now: number): boolean {
  const said = state.people.availability[id]?.state
  if (said === 'late' || said === 'away' || said === 'unwell') return false
  if (said === 'here' || !there || there.length === 0) return true
  return there.some(({ fromAt = -Infinity, toAt = Infinity }) => fromAt <= now && now < toAt)
}
