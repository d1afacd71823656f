/** Every plan worked out is judged by the checks that judge all others, which share no code with the planner. */
import {
  continuedTimeline,
  judge,
  planTimeline,
  raceTimeline,
  type Finding,
  type Plan,
  type State,
} from '@pitlamp/race'
import type { Ground } from './ground.ts'

/** What the plan breaks that was not broken before by what was driven. */
export function brokenBy(ground: Ground, plan: Plan): readonly Finding[] {
  const { isRace, now } = ground
  const state = meaning(ground, plan)
  const timeline = isRace ? continuedTimeline(state, now) : planTimeline(state, now)
  const before = new Set(isRace ? brokenSoFar(ground).map(keyOf) : [])
  return judge(state, timeline, now).filter(
    (finding) => finding.verdict === 'broken' && !before.has(keyOf(finding)),
  )
}

/** By what was driven, whatever is still to come. */
export function brokenSoFar({ state, now, isRace }: Ground): readonly Finding[] {
  if (!isRace) return []
  return judge(state, raceTimeline(state, now), now).filter(({ verdict }) => verdict === 'broken')
}

function keyOf({ id, people }: Finding): string {
  return `${id} ${people.join(' ')}`
}

/** Adopted now: what the wall moved in the plan before it does not move this one. */
function meaning({ state, now }: Ground, content: Plan): State {
  const adoption = { entry: 'worked out', version: 0, appliesFrom: now, content }
  const documents = { ...state.documents, plan: [...state.documents.plan, adoption] }
  return { ...state, documents }
}
