import { known } from '../../rules/shape.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { drivenInBlocks } from './blocks.ts'
import { leastAndMost, SENSES } from './least-and-most.ts'

/** Blocks shorter than this are a slip of the pen, and are not judged. */
const SHORTEST_BLOCK_MS = 60_000

/**
 * Fixed blocks of the race clock, counted on over segments from the first green. Each driver is judged in each
 * block that has begun; the last one, where it is shorter, for too much only. Nothing where no segment has a length.
 */
export const blockDriving: Check<'blockDriving'> = {
  axis: 'race',
  limits: ({ blockMs, atLeastMs, atMostMs }, bench) => {
    const length = known(blockMs)
    if (length === undefined || length < SHORTEST_BLOCK_MS) return []
    const reachedMs = reachedClockMs(bench)
    const hasBegun = ({ fromMs }: Block) => bench.timeline.isWhole || fromMs < reachedMs
    const driven = bench.drivers.map((driver) => drivenInBlocks(bench, driver, length))
    const cases = (sense: Case['sense'], limit: number): readonly Case[] =>
      bench.drivers.flatMap((driver, place) =>
        blocksOf(bench.raceMs, length, sense === 'atMost')
          .filter(hasBegun)
          .map(({ index, fromMs, toMs }) => {
            const block = driven[place]?.get(index)
            const value = block?.drivenMs ?? 0
            return {
              sense,
              unit: 'ms',
              limit,
              value,
              people: [driver.id],
              spans: block?.spans ?? [],
              at: block && sense === 'atMost' ? block.lastAt : meetingTime(bench, toMs),
              ...(sense === 'atLeast' && toMs > reachedMs ? { untilTheEnd: true } : {}),
              says: () =>
                `${driver.name} drives ${durationInWords(value)} from ${durationInWords(fromMs)} to ${durationInWords(toMs)} of the race, ${SENSES[sense]} ${durationInWords(limit)}.`,
            }
          }),
      )
    const called = `In each ${durationInWords(length)} of the race`
    return leastAndMost(called, { atLeast: atLeastMs, atMost: atMostMs }, cases)
  },
}

interface Block {
  readonly index: number
  readonly fromMs: number
  readonly toMs: number
}

function blocksOf(raceMs: number, length: number, withShorter: boolean): readonly Block[] {
  const blocks: Block[] = []
  for (let fromMs = 0; fromMs < raceMs; fromMs += length) {
    const toMs = Math.min(fromMs + length, raceMs)
    if (withShorter || toMs - fromMs === length) blocks.push({ index: blocks.length, fromMs, toMs })
  }
  return blocks
}

function reachedClockMs({ timeline, raceClockMs }: Bench): number {
  return timeline.spans.reduce(
    (furthest, { segment, toMs }) => Math.max(furthest, raceClockMs(segment, toMs)),
    0,
  )
}

/** About when the race clock shows so much: time a clock stood is left out. */
function meetingTime({ timeline, raceClockMs }: Bench, clockMs: number): number {
  const segment = timeline.segments.filter(({ id }) => raceClockMs(id, 0) < clockMs).at(-1)
  return segment ? segment.startsAt + clockMs - raceClockMs(segment.id, 0) : 0
}
