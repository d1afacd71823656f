/**
 * A long fictional race as recorded entries, in the order in which a server took them: six devices, arrivals
 * a little out of order, one phone an hour without network, corrections, second witnesses.
 */
import type { Kind, RecordedEntry, Role } from '@pitlamp/race'

const START_MS = 1_790_000_000_000
const STEP_MS = 4_300
const PEOPLE = 8
const DEVICES: readonly Role[] = ['pitWall', 'captain', 'pitWall', 'crew', 'crew', 'crew']
/** This phone has no network in the second hour. */
const OFFLINE = { device: 4, from: START_MS + 3_600_000, to: START_MS + 7_200_000 }

interface Said {
  readonly kind: Kind
  readonly body: unknown
  readonly device?: number
}

export function longLog(count: number): readonly RecordedEntry[] {
  const maker = new LogMaker()
  maker.add({ kind: 'adopted.1', body: adopted('rules', RULES), device: 1 })
  maker.add({ kind: 'adopted.1', body: adopted('crew', CREW), device: 1 })
  maker.add({ kind: 'green.1', body: { segment: 'whole' }, device: 0 })
  while (maker.entries.length < count) maker.next()
  return maker.arrived()
}

class LogMaker {
  readonly entries: RecordedEntry[] = []
  private readonly numbers = DEVICES.map(() => 0)
  private drawn = 20_260_101
  private lastFault = ''
  private lastCall = ''
  private isOff = false
  private isIn = false

  /** A linear congruential generator (Numerical Recipes' constants): the same log every time. */
  private draw(below: number): number {
    this.drawn = (Math.imul(this.drawn, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor((this.drawn / 4_294_967_296) * below)
  }

  add({ kind, body, device = this.draw(DEVICES.length) }: Said): string {
    const number = (this.numbers[device] ?? 0) + 1
    this.numbers[device] = number
    const place = this.entries.length
    const at = START_MS + place * STEP_MS + this.draw(900)
    const entry: RecordedEntry = {
      v: 1,
      id: uuid(place, 0),
      device: uuid(device, 1),
      n: number,
      at,
      atBoundMs: 20,
      epoch: 1,
      kind,
      body: JSON.stringify(body),
      seq: 1,
      recordedAt: at + 30 + this.draw(9_000),
      role: DEVICES[device] ?? 'crew',
    }
    this.entries.push(entry)
    return entry.id
  }

  /** What is pressed in a day and a night, in hundredths: mostly incidents. */
  next(): void {
    const what = this.draw(100)
    if (what < 60) this.add({ kind: 'incident.1', body: this.incident() })
    else if (what < 70)
      this.add({ kind: 'note.1', body: { words: 'Braid looks fine, tyres too.' } })
    else if (what < 76) this.add({ kind: 'workTicked.1', body: { work: 'Wipe tyres', done: true } })
    else if (what < 79) this.add({ kind: 'handover.1', body: { moves: this.moves() } })
    else if (what < 83) this.power()
    else if (what < 85) this.fault()
    else if (what < 88) this.call()
    else if (what < 93) this.stop()
    else if (what < 96) this.correct()
    else this.add({ kind: 'clockRead.1', body: this.reading(), device: 0 })
  }

  private incident(): unknown {
    return { what: 'deSlot', where: `turn ${this.draw(9)}` }
  }

  private moves(): unknown {
    const person = this.draw(PEOPLE)
    return [
      { person: uuid(person, 2), duty: 'controller' },
      { person: uuid((person + 1) % PEOPLE, 2), duty: 'post', post: '4' },
      { person: uuid((person + 2) % PEOPLE, 2), duty: 'offDuty' },
    ]
  }

  private power(): void {
    this.add({ kind: this.isOff ? 'powerOn.1' : 'trackCall.1', body: {}, device: 0 })
    if (this.draw(4) === 0) {
      this.add({ kind: this.isOff ? 'powerOn.1' : 'trackCall.1', body: {}, device: 2 })
    }
    this.isOff = !this.isOff
  }

  private fault(): void {
    this.lastFault = this.add({ kind: 'faultNoted.1', body: { fault: 'Braid' } })
    this.add({ kind: 'repairStarted.1', body: { fault: this.lastFault }, device: 0 })
    this.add({ kind: 'repairFinished.1', body: { fault: this.lastFault }, device: 0 })
  }

  private call(): void {
    const body = { person: uuid(this.draw(PEOPLE), 2), words: 'Ready in two minutes' }
    this.lastCall = this.add({ kind: 'call.1', body, device: 0 })
    this.add({ kind: 'answer.1', body: { call: this.lastCall, answer: 'heard' } })
  }

  private stop(): void {
    if (this.isIn) this.add({ kind: 'stopOut.1', body: { moment: 'leaving', work: [] }, device: 0 })
    else this.add({ kind: 'stopIn.1', body: { moment: 'stopped' }, device: 0 })
    this.isIn = !this.isIn
  }

  private correct(): void {
    const target = this.entries[this.entries.length - 1 - this.draw(20)]
    if (!target || target.kind === 'correction.1') return
    const change =
      this.draw(2) === 0 ? { what: 'void' } : { what: 'replace', at: target.at - 2_000 }
    const body = { target: target.id, basedOn: target.id, change, reason: 'Pressed late' }
    this.add({ kind: 'correction.1', body, device: 1 })
  }

  private reading(): unknown {
    return { segment: 'whole', shows: 'gone', readingMs: this.entries.length * STEP_MS }
  }

  /** A device sends in its own order. */
  arrived(): readonly RecordedEntry[] {
    const { from, to, device } = OFFLINE
    const last = new Map<string, number>()
    for (const entry of this.entries) {
      const isCutOff = entry.device === uuid(device, 1) && entry.at >= from && entry.at <= to
      const sent = isCutOff ? to : entry.recordedAt
      entry.recordedAt = Math.max(sent, (last.get(entry.device) ?? 0) + 1)
      last.set(entry.device, entry.recordedAt)
    }
    this.entries.sort((a, b) => a.recordedAt - b.recordedAt)
    this.entries.forEach((entry, place) => (entry.seq = place + 1))
    return this.entries
  }
}

function uuid(place: number, of: number): string {
  const low = place.toString(16).padStart(12, '0')
  return `019b0000-000${of}-7000-8000-${low}`
}

function adopted(document: string, content: unknown) {
  const sha256 = 'a'.repeat(64)
  return { document, version: 1, sha256, content, appliesFrom: START_MS, as: 'correction' }
}

const RULES = {
  name: 'A day and a night',
  timeZone: 'Europe/Berlin',
  programme: [{ id: 'whole', kind: 'segment', length: { by: 'time', lengthMs: 86_400_000 } }],
  rules: [
    {
      id: 'calls',
      kind: 'clockPolicy',
      value: { clock: 'segment', under: 'trackCall', does: 'holds' },
    },
  ],
}

const CREW = {
  people: Array.from({ length: PEOPLE }, (_, person) => ({
    id: uuid(person, 2),
    name: `Person ${person + 1}`,
    duties: ['controller', 'post'],
  })),
}
