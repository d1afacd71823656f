/** Every sketch of a small problem, tried one after the other. */
import type { Problem } from '../problem/problem.ts'
import { keepsAll, worth } from './keeps.ts'
import { sketchSlots, type Sketch, type SketchSlot } from './sketch.ts'

/** What the best one is worth; undefined where none keeps all rules. */
export function bestOfAll(problem: Problem): number | undefined {
  let best: number | undefined
  for (const sketch of everySketch(problem)) {
    if (!keepsAll(problem, sketch)) continue
    const value = worth(problem, sketch)
    if (best === undefined || value > best) best = value
  }
  return best
}

interface Choice {
  readonly driver: string | undefined
  readonly post: string | undefined
  readonly anew: boolean
  readonly stops: boolean
}

function* everySketch(problem: Problem): Generator<Sketch> {
  const slots = sketchSlots(problem)
  const open = slots.map((slot) => choicesOf(problem, slot))
  const chosen: Choice[] = []
  function* from(at: number): Generator<Sketch> {
    if (at === slots.length) {
      yield {
        slots,
        drivers: chosen.map(({ driver }) => driver),
        posts: chosen.map(({ post }) => post),
        anew: chosen.map(({ anew }) => anew),
        stops: chosen.map(({ stops }) => stops),
      }
      return
    }
    for (const choice of open[at] ?? []) {
      chosen[at] = choice
      yield* from(at + 1)
    }
  }
  yield* from(0)
}

function choicesOf(problem: Problem, { segment, begins }: SketchSlot): readonly Choice[] {
  const { people, rules, counting, joined } = problem
  const ids = people.map(({ id }) => id)
  const drivers = segment.lane === 'sitOut' ? [undefined] : ids
  const wantsPost = rules.some(
    (one) => one.kind === 'dutyWanted' && (one.segments?.includes(segment.id) ?? true),
  )
  const posts = wantsPost ? ids : [undefined]
  const stops = begins === 'mayStop' ? [false, true] : [begins === 'stop']
  const anew = counting.changeWithOneself && begins !== 'segment' ? [false, true] : [false]
  return drivers
    .flatMap((driver) =>
      posts.flatMap((post) =>
        stops.flatMap((stop) => anew.map((again) => ({ driver, post, stops: stop, anew: again }))),
      ),
    )
    .filter(({ driver, post }) => driver === undefined || driver !== post || joined.length > 0)
}
