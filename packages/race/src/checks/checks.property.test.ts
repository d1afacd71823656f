import fc from 'fast-check'
import { expect, test } from 'vitest'
import { someJudged } from '../testing/arbitrary-timeline.ts'
import { byBeginning } from '../timeline/spans.ts'
import type { TimelineSpan } from '../timeline/timeline.ts'
import type { Judged } from './bench.ts'
import { findings, type Finding } from './findings.ts'

const RUNS = { numRuns: 200 }
const clockTimes = ['isThere']
const ofEachSpan = ['isThere', 'inTheCrew', 'canTakeDuty', 'insideSegments', 'oneDuty', 'oneDriver']

test('nothing that is judged throws, and every figure is a whole number', () => {
  fc.assert(
    fc.property(someJudged('anyhow'), (judged) => {
      for (const { limit, value, margin, sentence } of findings(judged)) {
        for (const figure of [limit, value, margin]) expect(Number.isSafeInteger(figure)).toBe(true)
        expect(sentence).not.toMatch(/NaN|Infinity|undefined|null|\[object/)
        expect(sentence).toMatch(/\.$/)
      }
    }),
    RUNS,
  )
})

test('a timeline moved in time is judged the same, but for when people are there', () => {
  const judge = (judged: Judged) =>
    findings(judged).filter(({ id }) => !clockTimes.some((name) => id.startsWith(name)))
  const someShift = fc.integer({ min: -500_000_000, max: 500_000_000 })
  fc.assert(
    fc.property(someJudged('anyhow'), someShift, (judged, byMs) => {
      expect(judge(moved(judged, byMs))).toEqual(judge(judged))
    }),
    RUNS,
  )
})

test('people of other names and ids are judged the same, in other words', () => {
  const other = (text: string) => `other-${text}`
  const plain = (found: Finding, name: (id: string) => string) => ({
    ...found,
    people: found.people.map(name),
    sentence: '',
  })
  fc.assert(
    fc.property(someJudged('anyhow'), (judged) => {
      expect(findings(renamed(judged, other)).map((one) => plain(one, (id) => id))).toEqual(
        findings(judged).map((one) => plain(one, other)),
      )
    }),
    RUNS,
  )
})

test('a span in two of the same person is judged the same, unless the rules say it is a change', () => {
  fc.assert(
    fc.property(someJudged('inOrder'), fc.nat(), (anyJudged, pick) => {
      const judged = withoutChangeWithOneself(anyJudged)
      const { spans } = judged.timeline
      const span = spans[pick % Math.max(1, spans.length)]
      fc.pre(span !== undefined && span.toMs - span.fromMs > 30_000)
      expect(withoutSpans(findings(split(judged, span)))).toEqual(withoutSpans(findings(judged)))
    }),
    RUNS,
  )
})

test('the parts of a span are two stints where a change with oneself begins a new one', () => {
  const rules = [
    { id: 'a', kind: 'changeWithOneself', value: { begins: true } },
    { id: 'b', kind: 'numberOfChanges', value: { of: 'stints', atMost: 0 } },
  ] satisfies Judged['regulations']['rules']
  fc.assert(
    fc.property(someJudged('inOrder'), (any) => {
      const judged = { ...any, regulations: { ...any.regulations, rules: [...rules] } }
      const span = judged.timeline.spans.find(
        ({ duty, fromMs, toMs }) => duty === 'controller' && toMs - fromMs > 30_000,
      )
      fc.pre(span !== undefined)
      const stints = (of: Judged) => findings(of).find(({ rule }) => rule === 'b')?.value ?? 0
      expect(stints(split(judged, span))).toBe(stints(judged) + 1)
    }),
    RUNS,
  )
})

function moved({ timeline, ...judged }: Judged, byMs: number): Judged {
  return {
    ...judged,
    timeline: {
      ...timeline,
      segments: timeline.segments.map((segment) => ({
        ...segment,
        startsAt: segment.startsAt + byMs,
        ...(segment.endsAt === undefined ? {} : { endsAt: segment.endsAt + byMs }),
      })),
      spans: timeline.spans.map((span) => ({
        ...span,
        fromAt: span.fromAt + byMs,
        toAt: span.toAt + byMs,
      })),
      stops: timeline.stops.map((stop) => ({
        ...stop,
        at: stop.at + byMs,
        ...(stop.outAt === undefined ? {} : { outAt: stop.outAt + byMs }),
      })),
    },
  }
}

function renamed({ crew, timeline, ...judged }: Judged, other: (text: string) => string): Judged {
  return {
    ...judged,
    crew: {
      people: crew.people.map((one) => ({ ...one, id: other(one.id), name: other(one.name) })),
    },
    timeline: {
      ...timeline,
      spans: timeline.spans.map((span) => ({ ...span, person: other(span.person) })),
    },
  }
}

/** At a step in its middle; where the clock stood within it, what lies after that is cut off as a whole. */
function split({ timeline, ...judged }: Judged, span: TimelineSpan): Judged {
  const ranMs = 30_000
  const first = { ...span, toMs: span.fromMs + ranMs, toAt: span.fromAt + ranMs }
  const second = { ...span, id: `${span.id}-b`, fromMs: first.toMs, fromAt: first.toAt }
  const spans = [...timeline.spans.filter((one) => one !== span), first, second].sort(byBeginning)
  return { ...judged, timeline: { ...timeline, spans } }
}

function withoutChangeWithOneself({ regulations, ...judged }: Judged): Judged {
  const rules = regulations.rules.filter(({ kind }) => kind !== 'changeWithOneself')
  return { ...judged, regulations: { ...regulations, rules } }
}

/** What is asked of every span for itself is asked of both parts: of that only whether, and of whom. */
function withoutSpans(all: readonly Finding[]) {
  const isOfEach = ({ id, kind }: Finding) =>
    kind === 'mayNotDo' || ofEachSpan.some((name) => id.startsWith(name))
  return {
    found: all.filter((one) => !isOfEach(one)).map(({ spans: _spans, ...finding }) => finding),
    ofEach: [
      ...new Set(
        all
          .filter(isOfEach)
          .map(({ id, verdict, people }) => JSON.stringify([id, verdict, people])),
      ),
    ],
  }
}
