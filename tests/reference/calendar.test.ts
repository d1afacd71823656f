/**
 * The calendar file read back by an independent parser (ical.js), against RFC 5545, "Internet Calendaring and
 * Scheduling Core Object Specification (iCalendar)", https://www.rfc-editor.org/rfc/rfc5545; sections in the titles.
 */
import ICAL from 'ical.js'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { v7 as uuidV7 } from 'uuid'
import { openBench, type AppBench, type BenchDevice } from '../../server/src/app-bench.ts'
import {
  adoptPlan,
  draftPlan,
  GREEN,
  HOUR,
  PEOPLE,
  PLACE,
  PLAN,
  saveDraft,
  SOLVI,
} from '../../server/src/plan/plan-bench.ts'

const MEETING = 'Die lange Nacht; zwölf Stunden, zwei Wagen\nSUMMARY:none'
const NOTICED = Date.UTC(2030, 9, 20, 12, 0, 30)

let bench: AppBench
let captain: BenchDevice
let meeting: string
let nowMs: number
beforeEach(async () => {
  nowMs = NOTICED
  bench = await openBench({ clocks: { wall: () => nowMs, monotonic: () => nowMs } })
  captain = await bench.device('captain')
  meeting = uuidV7()
  await captain.ask('POST /api/meetings', { body: { id: meeting, name: MEETING } })
  await draftPlan({ device: captain, meeting })
})
afterEach(() => bench.close())

async function fileOf(person?: string): Promise<string> {
  const query = person === undefined ? '' : `?person=${person}`
  const answer = await captain.ask(`GET /api/meetings/${meeting}/calendar.ics${query}`)
  return answer.body as string
}

async function read(person?: string) {
  const calendar = new ICAL.Component(ICAL.parse(await fileOf(person)) as unknown[])
  const events = calendar.getAllSubcomponents('vevent').map((part) => {
    const event = new ICAL.Event(part)
    return {
      ...{ uid: event.uid, sequence: event.sequence, summary: event.summary },
      ...{ location: event.location, description: event.description },
      start: event.startDate.toICALString(),
      end: event.endDate.toICALString(),
      stamp: String(part.getFirstPropertyValue('dtstamp')),
      status: part.getFirstPropertyValue('status'),
    }
  })
  const property = (name: string) => unescaped(name, calendar.getFirstPropertyValue(name))
  return { events, property, of: (line: string) => events.find(({ uid }) => uid.startsWith(line)) }
}

/** Properties of programs' own are text (3.8.8.2), but this parser leaves them as escaped as they came (3.3.11). */
function unescaped(name: string, value: unknown): unknown {
  if (!name.startsWith('x-') || typeof value !== 'string') return value
  return value.replaceAll(/\\([\\;,n])/g, (_, escaped) =>
    escaped === 'n' ? '\n' : String(escaped),
  )
}

const savePlan = (basedOn: number, spans = PLAN.spans) =>
  saveDraft(
    { device: captain, meeting },
    { document: 'plan', basedOn, content: { ...PLAN, spans } },
  )
const withoutWall = PLAN.spans.filter(({ id }) => id !== 'w1')

describe('the calendar file, read by another program,', () => {
  test('has an event for each duty of everybody, with the names as they were written (3.3.11)', async () => {
    const { events } = await read()
    expect(events.map(({ summary }) => summary)).toEqual([
      `${SOLVI} · Drive · Segment 1`,
      'Okello · Marshal post 3 · Segment 1',
      'Tamsin · Wall · Segment 1',
      'Tamsin · Bench · Segment 1',
      'Okello · Drive · Segment 1',
      `${SOLVI} · Drive · Dämmerung, die zweite`,
    ])
    expect(new Set(events.map(({ location }) => location))).toEqual(new Set([PLACE]))
  })

  test('has for one person that person’s duties, without the name in front', async () => {
    const { events, property } = await read(PEOPLE.okello)
    expect(events.map(({ summary }) => summary)).toEqual([
      'Marshal post 3 · Segment 1',
      'Drive · Segment 1',
    ])
    expect(property('x-wr-calname')).toBe(`Okello · ${MEETING}`)
  })

  test('has times in UTC (3.3.5), past midnight and over the end of summer time at the venue', async () => {
    const { of } = await read()
    // 22:00 to 00:30 in Berlin, two hours ahead of UTC.
    expect(of('d1')).toMatchObject({ start: '20301026T200000Z', end: '20301026T223000Z' })
    // From 00:30 UTC, 02:30 at the venue, an hour: at 01:00 UTC the venue's clocks go from 03:00 back to 02:00.
    expect(of('d3')).toMatchObject({ start: '20301027T003000Z', end: '20301027T013000Z' })
    expect(of('d3')?.description.split('\n')).toEqual([
      '1:00:00 on the race clock, from 0:00:00.',
      'Times are about: Sun 27 Oct 02:30 GMT+2 to Sun 27 Oct 02:30 GMT+1.',
      'A draft that is not adopted yet, as of Sun 20 Oct 14:00 GMT+2.',
    ])
  })

  test('publishes (3.7.2), says when it was made (3.8.7.2) and from which plan', async () => {
    const { property, events } = await read()
    const whole = [property('version'), property('method'), property('prodid')]
    expect(whole).toEqual(['2.0', 'PUBLISH', '-//Pitlamp//Plan//EN'])
    expect(new Set(events.map(({ stamp }) => stamp))).toEqual(new Set(['2030-10-20T12:00:30Z']))
    const asOf = 'as of Sun 20 Oct 14:00 GMT+2.'
    expect(property('x-wr-caldesc')).toBe(`A draft that is not adopted yet, ${asOf}`)
    await adoptPlan({ device: captain, meeting }, { content: PLAN, at: nowMs })
    expect((await read()).property('x-wr-caldesc')).toBe(`The adopted plan, ${asOf}`)
  })

  test('is one calendar whatever a meeting is called: no name ends its line', async () => {
    const { property, events } = await read()
    expect(property('x-wr-calname')).toBe(MEETING)
    expect(property('summary')).toBeNull()
    expect(events).toHaveLength(6)
  })

  test('sent again has the same UID for each duty (3.8.4.7), of its line, person and meeting', async () => {
    const uids = async () => (await read()).events.map(({ uid }) => uid)
    const first = await uids()
    expect(new Set(first).size).toBe(6)
    expect(first[0]).toBe(`d1-${PEOPLE.solvi}@${meeting}.pitlamp`)
    nowMs += HOUR
    const moved = PLAN.spans.map((span) => (span.id === 'd1' ? { ...span, toMs: HOUR } : span))
    await savePlan(1, moved)
    expect((await uids()).sort()).toEqual([...first].sort())
  })

  test('sent again has a higher SEQUENCE after every change (3.8.7.4), and the same without one', async () => {
    const sequences = async () => [
      ...new Set((await read()).events.map(({ sequence }) => sequence)),
    ]
    // Three drafts of version 1, no entry.
    expect(await sequences()).toEqual([3])
    nowMs += HOUR
    expect(await sequences()).toEqual([3])
    await savePlan(1)
    expect(await sequences()).toEqual([4])
    await adoptPlan({ device: captain, meeting }, { content: PLAN, at: nowMs })
    expect(await sequences()).toEqual([5])
  })

  test('cancels what an earlier adopted plan had and this one has not (3.8.1.11)', async () => {
    await adoptPlan({ device: captain, meeting }, { content: PLAN, at: nowMs })
    nowMs += 1_000
    const changed = { ...PLAN, spans: withoutWall }
    await adoptPlan({ device: captain, meeting }, { content: changed, at: nowMs })
    const { events, of } = await read(PEOPLE.tamsin)
    expect(of('w1')).toMatchObject({ status: 'CANCELLED', start: '20301026T200000Z', sequence: 5 })
    expect(of('b1')).toMatchObject({ status: 'CONFIRMED' })
    expect(events).toHaveLength(2)
  })

  test('cancels the duty of whom another person relieved of it, for that person', async () => {
    await adoptPlan({ device: captain, meeting }, { content: PLAN, at: nowMs })
    nowMs += 1_000
    const spans = PLAN.spans.map((span) =>
      span.id === 'w1' ? { ...span, person: PEOPLE.okello } : span,
    )
    await adoptPlan({ device: captain, meeting }, { content: { ...PLAN, spans }, at: nowMs })
    expect((await read(PEOPLE.tamsin)).of('w1')).toMatchObject({ status: 'CANCELLED' })
    expect((await read(PEOPLE.okello)).of('w1')).toMatchObject({ status: 'CONFIRMED' })
  })

  test('cancels, while none is adopted, what the version kept before the draft had', async () => {
    nowMs += 60_000
    await savePlan(1, withoutWall)
    expect((await read()).of('w1')).toMatchObject({ status: 'CANCELLED' })
    // Saved again within a minute: the version before is still the first one.
    nowMs += 10_000
    await savePlan(2, withoutWall)
    expect((await read()).of('w1')).toMatchObject({ status: 'CANCELLED' })
  })

  test('cancels nothing that is over', async () => {
    nowMs = GREEN
    await adoptPlan({ device: captain, meeting }, { content: PLAN, at: nowMs })
    const green = captain.entry({ at: nowMs, kind: 'green.1', body: '{"segment":"one"}' })
    const body = { meeting, entries: [green] }
    await captain.ask(`POST /api/meetings/${meeting}/entries`, { body })
    nowMs = GREEN + 2 * HOUR
    await adoptPlan(
      { device: captain, meeting },
      { content: { ...PLAN, spans: withoutWall }, at: nowMs },
    )
    expect((await read()).of('w1')).toBeUndefined()
  })

  test('has lines of at most 75 octets that end with CRLF, folded between characters (3.1)', async () => {
    const text = await fileOf()
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true)
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    const octets = new TextEncoder()
    const lengths = text.split('\r\n').map((line) => octets.encode(line).length)
    expect(Math.max(...lengths)).toBeLessThanOrEqual(75)
    expect(text).toMatch(/\r\n /)
    // Half a character would not have come through as text.
    expect(text).not.toContain('\u{fffd}')
  })
})
