import type { Rule, RuleKind } from '../rules/index.ts'
import { NOT_KNOWN_YET } from '../rules/shape.ts'
import { choiceWords } from '../sentences/in-words.ts'
import { SENTENCES } from '../sentences/index.ts'
import type { Contradiction } from './contradiction.ts'
import type { Look } from './ground.ts'

/**
 * Kinds of which only one rule can hold, each with the parts that say what it is about. Limits are not among them:
 * of two limits the narrower one holds.
 */
const ONLY_ONE: { readonly [K in RuleKind]?: readonly string[] } = {
  clockPolicy: ['clock', 'under'],
  workAllowed: ['during'],
  stopMinimum: [],
  mandatoryStops: ['per'],
  stopRhythm: [],
  trackCallStop: [],
  driverChange: [],
  changeAtStop: [],
  changeWithOneself: [],
  countsAsDriving: ['what'],
  cutProRata: [],
  endDriver: ['which', 'who'],
  followingDrivers: ['first', 'then'],
  marshalsOwed: ['when'],
  marshalWhileDriving: [],
  postByLane: [],
  relief: [],
  sitOutDuty: [],
  laneChange: [],
  laneOrder: [],
  startingLane: [],
  tracks: [],
  restart: [],
  darkSegments: [],
  darkHours: [],
  bodyOffChassis: [],
  whoWorks: [],
  allowance: ['of'],
  pitBox: [],
  pitLaneLap: [],
  servePenalty: ['penalty'],
  energy: [],
  scoring: [],
  points: ['per'],
  ties: [],
  classified: [],
}

/** Two rules of one kind about the same thing with a known part that differs. */
export const saidTwice: Look = ({ rules }) =>
  rules.flatMap((first, place) =>
    rules.slice(place + 1).flatMap((second): Contradiction[] => {
      const keys = ONLY_ONE[first.kind]
      if (!keys || second.kind !== first.kind || !differ(first, second, keys)) return []
      const about = keys.map((key) => inWords(first, key)).join(', ')
      const { called } = SENTENCES[first.kind]
      return [
        {
          id: `saidTwice:${first.id}:${second.id}`,
          rules: [first.id, second.id],
          what: `${called}${about === '' ? '' : ` (${about})`}: two rules say different things.`,
          why: 'Only one of them can hold. Until one goes, the first counts.',
        },
      ]
    }),
  )

type Value = Readonly<Record<string, unknown>>

function differ(first: Rule, second: Rule, keys: readonly string[]): boolean {
  const [one, other] = [first.value as Value, second.value as Value]
  if (!keys.every((key) => isSaid(one[key]) && same(one[key], other[key]))) return false
  return Object.keys(one).some(
    (part) => isSaid(one[part]) && isSaid(other[part]) && !same(one[part], other[part]),
  )
}

function isSaid(part: unknown): boolean {
  return part !== undefined && part !== NOT_KNOWN_YET
}

/** Words without regard to capitals. */
function same(one: unknown, other: unknown): boolean {
  const [a, b] = [one, other].map((part) => JSON.stringify([part]).toLowerCase())
  return a === b
}

function inWords(rule: Rule, part: string): string {
  const said = String((rule.value as Value)[part])
  return choiceWords(rule, part)[said] ?? said
}
