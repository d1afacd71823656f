import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import { explain } from './explain.ts'
import { plan } from './plan.ts'
import { minutes, problem } from './testing/make.ts'
import { smallProblem } from './testing/small.ts'
import { without } from './without.ts'

const solver = await loadHighs()

describe('explain', () => {
  it('names the one rule to give up, and those it collides with', () => {
    // Two people, half an hour each at most, is an hour; 20 min each is not.
    const why = explain(
      problem({
        rules: [
          { id: 'most', kind: 'drivingTime', atMostMs: minutes(20) },
          { id: 'stints', kind: 'stintsEach', atMost: 3 },
        ],
      }),
      { solver },
    )
    expect(why).toEqual({ kind: 'collision', giveUp: ['most'], collide: ['most'] })
  })

  it('counts a pin among what collides', () => {
    const why = explain(
      problem({
        rules: [{ id: 'not ada', kind: 'mayNot', person: 'ada', duty: 'controller' }],
        pins: [
          {
            id: 'pinned',
            kind: 'span',
            person: 'ada',
            duty: 'controller',
            segment: 'one',
            fromMs: 0,
            toMs: minutes(15),
          },
        ],
      }),
      { solver },
    )
    expect(why).toMatchObject({ giveUp: [expect.any(String)], collide: ['not ada', 'pinned'] })
  })

  it('says where nothing collides', () => {
    expect(explain(problem(), { solver })).toEqual({ kind: 'possible' })
  })

  it('finds sets that are smallest: without any one of them the others can be kept', () => {
    let seen = 0
    for (let seed = 1; seen < 3; seed += 1) {
      const small = smallProblem(seed)
      if (plan(small, { solver }).kind !== 'impossible') continue
      seen += 1
      const why = explain(small, { solver })
      if (why.kind !== 'collision') throw new Error(`Seed ${seed} is ${why.kind}.`)
      expect(plan(without(small, why.giveUp), { solver }).kind).toBe('planned')
      const others = small.rules.map(({ id }) => id).filter((id) => !why.collide.includes(id))
      const alone = without(small, others)
      expect({ seed, kind: plan(alone, { solver }).kind }).toEqual({ seed, kind: 'impossible' })
      for (const id of why.collide) {
        const kind = plan(without(alone, [id]), { solver }).kind
        expect({ seed, id, kind }).toEqual({ seed, id, kind: 'planned' })
      }
    }
  }, 120_000)
})
