/** A finger, mouse or key that moves part of the plan. Nothing is kept before it lets go; Escape gives it up. */
import type { PlanSpan, TimelineSegment } from '@pitlamp/race'
import { changeStop, moveEdge, moveSpan, type Edge } from './plan-moves.ts'
import type { RotationModel } from './rotation-model.svelte.ts'
import { across, atOf, positionOf, snapOf, snapped, type Strip } from './strip.ts'

/** A press that moves less than this is a choice, not a drag. */
const STILL_PX = 6

export type Held =
  | { readonly part: 'span'; readonly id: string }
  | { readonly part: 'edge'; readonly id: string; readonly edge: Edge }
  | { readonly part: 'stop'; readonly id: string }

export interface Ground {
  readonly strip: Strip
  readonly segments: readonly TimelineSegment[]
  readonly people: readonly string[]
  readonly rowPx: number
}

interface Grip {
  readonly held: Held
  readonly x: number
  readonly y: number
  moved: boolean
}

export class Drag {
  readonly #model: RotationModel
  readonly #ground: () => Ground
  #grip: Grip | undefined

  constructor(model: RotationModel, ground: () => Ground) {
    this.#model = model
    this.#ground = ground
  }

  /** Touches the pointer, which stays with the element until it lets go. */
  grab(event: PointerEvent & { currentTarget: HTMLElement }, held: Held): void {
    if (event.button !== 0) return
    this.#grip = { held, x: event.clientX, y: event.clientY, moved: false }
    event.currentTarget.setPointerCapture(event.pointerId)
  }

  move(event: PointerEvent): void {
    const grip = this.#grip
    if (!grip) return
    const [dx, dy] = [event.clientX - grip.x, event.clientY - grip.y]
    if (!grip.moved && Math.hypot(dx, dy) < STILL_PX) return
    grip.moved = true
    this.#model.mean(undefined)
    this.#mean(grip.held, dx, dy)
  }

  /** Whether it was a drag; otherwise the press that follows is a choice. */
  release(): boolean {
    const moved = this.#grip?.moved === true
    this.#grip = undefined
    if (moved) this.#model.keep()
    return moved
  }

  cancel(): void {
    this.#grip = undefined
    this.#model.mean(undefined)
  }

  /** One step of the strip's grid along it, and so many rows down. */
  nudge(held: Held, steps: number, rows = 0): void {
    const { strip, rowPx } = this.#ground()
    const dx = across(strip, strip.fromAt + steps * snapOf(strip))
    this.#mean(held, dx, rows * rowPx)
    this.#model.keep()
  }

  #mean(held: Held, dx: number, dy: number): void {
    const { plan } = this.#model
    if (held.part === 'stop') this.#meanStop(held.id, dx)
    const span = plan.spans.find(({ id }) => id === held.id)
    if (!span) return
    if (held.part === 'edge') this.#meanEdge(span, held.edge, dx)
    if (held.part === 'span') this.#meanSpan(span, dx, dy)
  }

  #meanEdge(span: PlanSpan, edge: Edge, dx: number): void {
    const { strip } = this.#ground()
    const byMs = atOf(strip, dx) - strip.fromAt
    const toMs = snapped(span[edge] + byMs, snapOf(strip))
    const lengthMs = this.#model.lengthOf(span.segment)
    this.#model.mean(moveEdge(this.#model.plan, { id: span.id, edge, toMs, lengthMs }))
  }

  #meanSpan(span: PlanSpan, dx: number, dy: number): void {
    const { people, rowPx } = this.#ground()
    const row = people.indexOf(span.person) + Math.round(dy / rowPx)
    const person = people[Math.max(0, Math.min(people.length - 1, row))] ?? span.person
    const to = this.#moved(span.segment, span.fromMs, dx)
    if (!to) return
    const lengthMs = this.#model.lengthOf(to.segment)
    this.#model.mean(moveSpan(this.#model.plan, { id: span.id, person, to, lengthMs }))
  }

  #meanStop(id: string, dx: number): void {
    const stop = this.#model.plan.stops.find((one) => one.id === id)
    const to = stop && this.#moved(stop.segment, stop.atMs, dx)
    if (!to) return
    this.#model.mean(changeStop(this.#model.plan, id, { segment: to.segment, atMs: to.clockMs }))
  }

  #moved(segment: string, clockMs: number, dx: number) {
    const { strip, segments } = this.#ground()
    const from = segments.find(({ id }) => id === segment)
    if (!from) return undefined
    const at = from.startsAt + clockMs + atOf(strip, dx) - strip.fromAt
    return positionOf(segments, at, snapOf(strip))
  }
}
