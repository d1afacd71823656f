import { stayOut } from './clocks/stay-out.ts'
import { smallMeeting, adopt, MINUTE } from './testing/small-meeting.ts'
import { GREEN, Pressing } from './testing/pressing.ts'
const P = (n: number) => `019b0000-0002-7000-8000-${n.toString(16).padStart(12, '0')}`
const people = [...Array(8).keys()].map((n) => ({ id: P(n + 1), name: 'P' + n, duties: [], paceMs: 9000 }))
const pressing = new Pressing()
const H = 3_600_000
adopt(pressing, { document: 'rules', content: { name: 'x', timeZone: 'Europe/Berlin', programme: [{ id: 'one', kind: 'segment', length: { by: 'time', lengthMs: 24 * H } }], rules: [
 { id: 'a', kind: 'rollingDriving', value: { atMostMs: 4 * H, withinMs: 6 * H } },
 { id: 'b', kind: 'continuousDriving', value: { atMostMs: 2 * H } },
 { id: 'c', kind: 'driverRest', value: { atLeastMs: H, marshalling: 'isRest' } },
] } })
adopt(pressing, { document: 'crew', content: { people } })
const spans: any[] = []
for (let i = 0; i < 48; i++) { spans.push({ id: 'd' + i, person: P(i % 8 + 1), duty: 'controller', segment: 'one', fromMs: i * H / 2, toMs: (i + 1) * H / 2 })
 spans.push({ id: 'm' + i, person: P((i + 4) % 8 + 1), duty: 'post', post: '1', segment: 'one', fromMs: i * H / 2, toMs: (i + 1) * H / 2 }) }
adopt(pressing, { document: 'plan', content: { spans, stops: [], captain: { goMarginMs: 0, askForClockAtMs: 5000, hotWorkInStops: false } } })
pressing.press(GREEN, 'green.1', { segment: 'one' })
const state = pressing.state()
for (let i = 0; i < 3; i++) { const t = performance.now(); const r = stayOut(state, GREEN + 10 * MINUTE); console.log(r?.allowedMs, r?.stoppedBy.map((f) => f.sentence), performance.now() - t, state.problems.length) }
