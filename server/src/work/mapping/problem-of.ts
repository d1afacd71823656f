/** Rules, crew, plan and race → the problem the planner works out. Pure; ids lead back to the lines they come from. */
import type { Problem, Rule } from '@pitlamp/planner'
import { known, policyFor, ruleValue, rulesOf } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import { DUTY_CHANGE_LAPS, IN_AND_OUT_MS } from './guesses.ts'
import { plannedPeople } from './people.ts'
import { plannedPins } from './pins.ts'
import { postsWanted } from './posts.ts'
import { plannedRules } from './rule-map.ts'
import { plannedSegments } from './segments.ts'
import type { Settings } from './settings.ts'
import { plannedWishes } from './wishes.ts'

export function problemOf(ground: Ground, settings: Settings): Problem {
  const rules = plannedRules(ground)
  const standsMs = known(ruleValue(ground.regulations.rules, 'stopMinimum')?.minimumMs) ?? 0
  const both = known(ruleValue(ground.regulations.rules, 'marshalWhileDriving')?.allowed) === true
  return {
    segments: plannedSegments(ground, settings),
    people: plannedPeople(ground),
    rules: [...rules, ...needs(rules, ground, settings)],
    wishes: plannedWishes(ground),
    pins: plannedPins(ground),
    stop: { standsMs, costsMs: standsMs + IN_AND_OUT_MS },
    counting: counting(ground),
    balance: settings.balance,
    joined: both ? [['controller', 'post']] : [],
    dutyChangeLaps: DUTY_CHANGE_LAPS,
  }
}

function counting({ regulations }: Ground): Problem['counting'] {
  const { rules } = regulations
  const stops = rulesOf(rules, 'countsAsDriving').find(({ value }) => value.what === 'stops')
  const change = policyFor(regulations, 'driving', 'laneChange')
  return {
    stops: known(stops?.value.counts) !== false,
    laneChanges: change.does === 'runs' && !change.assumed,
    changeWithOneself: known(ruleValue(rules, 'changeWithOneself')?.begins) === true,
  }
}

/** One person on each duty that was asked for; posts only where no rule says how many. */
function needs(rules: readonly Rule[], ground: Ground, { duties }: Settings): readonly Rule[] {
  const segments = ground.timeline.segments
  return duties.flatMap((duty): readonly Rule[] => {
    if (duty !== 'post') return [{ id: `need/${duty}`, kind: 'dutyWanted', duty, count: 1 }]
    const isOwed = rules.some((rule) => rule.kind === 'dutyWanted' && rule.duty === 'post')
    return isOwed ? [] : postsWanted({ id: 'need/post', count: 1, segments }, ground)
  })
}
