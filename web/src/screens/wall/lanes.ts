/** Lanes to come, as the wall shows them. */
import { lanesOf, segmentsOf, type State } from '@pitlamp/race'
import { laneNow, laneWords } from '../../parts/lane-words.ts'
import { hasLanes } from './verb-context.ts'

/** More than this does not fit a line. */
const SHOWN = 6

/**
 * `Lane 3, green. To come: lane 5, sit-out`, `Lanes to come: not drawn yet`; undefined where lanes mean nothing or
 * no segment is to come.
 */
export function lanesToCome(state: State, now: number): string | undefined {
  const lanes = lanesOf(state, now)
  const ahead = segmentsOf(state, now).filter((outlook) => outlook.state === 'ahead')
  if (ahead.length === 0 || !hasLanes(state, now)) return undefined
  const here = laneNow(state, now)
  const words = ahead.map(({ item }) => laneWords(lanes.get(item.id) ?? 'notDrawnYet'))
  const drawn = words.some((word) => word !== NOT_DRAWN)
  const more = words.length > SHOWN ? ' …' : ''
  const all = drawn ? `${words.slice(0, SHOWN).map(shortly).join(', ')}${more}` : NOT_DRAWN
  if (here === undefined) return `Lanes to come: ${all}`
  const own = laneWords(here)
  return `${own.charAt(0).toUpperCase()}${own.slice(1)}. Lanes to come: ${all}`
}

const NOT_DRAWN = laneWords('notDrawnYet')

/** Colours stand with the lane we are on: in a row of lanes the numbers are enough. */
function shortly(words: string): string {
  return words === NOT_DRAWN ? 'not drawn' : words.replace(/, .*$/, '')
}
