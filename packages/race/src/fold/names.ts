/** What people and segments are called, for sentences and labels. */
import { inForce, type WithDocuments } from './in-force.ts'
import type { Move } from '../entry/scalars.ts'

/** The latest adopted version is asked: names are not a matter of when. */
const LATEST = Number.MAX_SAFE_INTEGER

/** The name in the crew document, *Somebody* where the crew does not have this person. */
export function personName(state: WithDocuments, person: string): string {
  const crew = inForce(state, 'crew', LATEST)
  return crew?.people.find((member) => member.id === person)?.name ?? 'Somebody'
}

/** The organiser's name for a segment, or its number in the programme. */
export function segmentName(state: WithDocuments, segment: string): string {
  const programme = inForce(state, 'rules', LATEST)?.programme ?? []
  const segments = programme.filter((item) => item.kind === 'segment')
  const index = segments.findIndex((item) => item.id === segment)
  if (index < 0) return 'A segment that is not in the programme'
  return segments[index]?.name ?? `Segment ${index + 1}`
}

/** One move as it is called out: "Okello drives", "Tamsin to post 4". */
export function moveLabel(
  state: WithDocuments,
  move: Pick<Move, 'person' | 'duty' | 'post'>,
): string {
  const name = personName(state, move.person)
  switch (move.duty) {
    case 'controller':
      return `${name} drives`
    case 'post':
      return move.post === undefined ? `${name} marshals` : `${name} to post ${move.post}`
    case 'wall':
      return `${name} to the wall`
    case 'bench':
      return `${name} to the bench`
    case 'offDuty':
      return `${name} off duty`
  }
}
