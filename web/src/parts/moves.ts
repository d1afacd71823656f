/** Moves of a handover: as sentences, and changed by taps. A list of moves is in the order people move. */
import type { Duty, Move } from '@pitlamp/race'

export const DUTY_WORD = {
  controller: 'Controller',
  post: 'Marshal',
  wall: 'Wall',
  bench: 'Bench',
  offDuty: 'Off duty',
} as const satisfies Record<Duty, string>

/** `Okello drives`, `Tamsin to post 4`, `Imre to the wall`, `Solveig off duty`. */
export function moveWords(move: Move, nameOf: (person: string) => string): string {
  const name = nameOf(move.person)
  if (move.duty === 'controller') return `${name} drives`
  if (move.duty === 'offDuty') return `${name} off duty`
  if (move.duty === 'post') return move.post ? `${name} to post ${move.post}` : `${name} marshals`
  return `${name} to the ${move.duty}`
}

/** The same as an order to the person who reads it: `you drive`, `post 4`, `the wall`, `off duty`. */
export function dutyWords(duty: Duty, post: string | undefined): string {
  if (duty === 'controller') return 'you drive'
  if (duty === 'offDuty') return 'off duty'
  if (duty === 'post') return post ? `post ${post}` : 'marshal'
  return `the ${duty}`
}

export function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/**
 * Somebody else drives. Where the list has a driver already, the two swap what they were to do; otherwise
 * `driving` steps down after. Choosing whoever drives now leaves the controller where it is.
 */
export function withDriver(
  moves: readonly Move[],
  driver: string,
  driving: string | undefined,
): readonly Move[] {
  const planned = moves.find(({ duty }) => duty === 'controller')?.person
  if (planned === driver) return moves
  if (planned !== undefined) {
    return moves.map((move) => {
      if (move.person === planned) return { ...move, person: driver }
      return move.person === driver ? { ...move, person: planned } : move
    })
  }
  const others = moves.filter(({ person }) => person !== driver)
  const takes: Move = { person: driver, duty: 'controller' }
  const steps = driving === undefined || driving === driver || has(others, driving)
  return steps ? [...others, takes] : [...others, takes, { person: driving, duty: 'offDuty' }]
}

/** This person gets this duty instead, at their place in the order or at its end. */
export function withMove(moves: readonly Move[], move: Move): readonly Move[] {
  return has(moves, move.person)
    ? moves.map((old) => (old.person === move.person ? move : old))
    : [...moves, move]
}

export function withoutMove(moves: readonly Move[], person: string): readonly Move[] {
  return moves.filter((move) => move.person !== person)
}

function has(moves: readonly Move[], person: string): boolean {
  return moves.some((move) => move.person === person)
}
