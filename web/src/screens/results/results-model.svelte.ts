/** What the results show, and a segment's classification on its way in. */
import { counted, inForce, known, pastedLines, rulesOf, segmentsOf, type Body } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import {
  emptyRows,
  linesOf,
  nextCell,
  pastedRows,
  withDigit,
  withOurs,
  withoutDigit,
  withoutTeam,
  withTeam,
  type Cell,
  type Row,
} from './rows.ts'
import { resultsShown } from './result-face.ts'

const TEN_MS = 10_000

export class ResultsModel {
  readonly #of: () => MeetingPort
  #segment = $state<string>()
  #typed = $state.raw<readonly Row[]>()
  #cell = $state.raw<Cell>()
  /** Rows that were pasted and say nothing that can be read. */
  unread = $state.raw<readonly string[]>([])
  /** What was recorded last. */
  recorded = $state<string>()

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
  }

  readonly #now = $derived.by(() => {
    const { state, now } = this.#of()
    const last = state.record.log.at(-1)?.at ?? 0
    return Math.min(now, Math.max(Math.floor(now / TEN_MS) * TEN_MS, last))
  })
  readonly shown = $derived.by(() => resultsShown(this.#of().state, this.#now))
  readonly may = $derived.by(() => this.#of().may('classification.1'))

  /** Those that have run: the last one first. */
  readonly segments = $derived.by((): readonly (readonly [id: string, name: string])[] =>
    segmentsOf(this.#of().state, this.#now)
      .filter(({ state }) => state !== 'ahead')
      .map(({ item, index }) => [item.id, item.name ?? `Segment ${index + 1}`] as const)
      .reverse(),
  )
  /** The last one that is over, until another is chosen. */
  readonly segment = $derived.by(() => {
    if (this.#segment !== undefined) return this.#segment
    const run = segmentsOf(this.#of().state, this.#now).filter(({ state }) => state !== 'ahead')
    return (run.filter(({ state }) => state === 'over').at(-1) ?? run.at(-1))?.item.id
  })
  readonly sections = $derived.by(() => {
    const rules = inForce(this.#of().state, 'rules', this.#now)?.rules ?? []
    return known(rulesOf(rules, 'tracks')[0]?.value.sections) !== undefined
  })
  readonly #us = $derived.by(() => {
    const named = this.#of()
      .state.raceControl.classifications.flatMap(({ body }) => body.lines)
      .filter(({ ours }) => ours)
    return named.at(-1)?.entrant ?? inForce(this.#of().state, 'car', this.#now)?.name ?? 'We'
  })
  /** Teams as the fullest classification so far has them. */
  readonly rows = $derived.by(() => {
    if (this.#typed) return this.#typed
    const all = this.#of().state.raceControl.classifications.map(({ body }) => body.lines)
    const [fullest = []] = [...all].reverse().sort((a, b) => b.length - a.length)
    return emptyRows(fullest, this.#us)
  })
  readonly cell = $derived.by((): Cell | undefined => {
    const first = this.rows[0]
    return this.#cell ?? (first && { row: first.id, field: 'laps' })
  })
  readonly lines = $derived.by(() => linesOf(this.rows))

  readonly chooseSegment = (id: string): void => {
    this.#segment = id
  }
  readonly chooseCell = (cell: Cell): void => {
    this.#cell = cell
  }
  readonly digit = (digit: string): void => {
    if (this.cell) this.#typed = withDigit(this.rows, this.cell, digit)
  }
  readonly back = (): void => {
    if (this.cell) this.#typed = withoutDigit(this.rows, this.cell)
  }
  readonly next = (): void => {
    if (this.cell) this.#cell = nextCell(this.rows, this.cell, this.sections)
  }
  readonly addTeam = (name: string): void => {
    this.#typed = withTeam(this.rows, name)
  }
  readonly takeOut = (row: string): void => {
    this.#typed = withoutTeam(this.rows, row)
    this.#cell = undefined
  }
  readonly ours = (row: string): void => {
    this.#typed = withOurs(this.rows, row)
  }
  readonly paste = (text: string): void => {
    const { lines, unread } = pastedLines(text)
    this.unread = unread
    if (lines.length === 0) return
    this.#typed = pastedRows(lines, this.#us)
    this.#cell = undefined
  }

  readonly record = (standing: Body<'classification.1'>['standing']): void => {
    const { lines, segment } = this
    if (!lines || segment === undefined) return
    this.#of().press('classification.1', { standing, scope: 'segment', segment, lines })
    const name = this.segments.find(([id]) => id === segment)?.[1] ?? 'Segment'
    this.recorded = `${name}: ${counted(lines.length, 'team')} recorded`
    this.#typed = undefined
    this.#cell = undefined
    this.unread = []
  }
  readonly undo = $derived.by(() =>
    this.#of().undoable?.kind === 'classification.1' ? this.recorded : undefined,
  )
  readonly takeBack = (): void => {
    this.#of().undo()
  }
}
