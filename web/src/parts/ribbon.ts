/** The race as one strip: what a ribbon shows and where it lies. All times are meeting time. */

export interface RibbonSpan {
  readonly id: string
  /** Wall and bench are one thin line: somebody is busy, the car does not depend on it. */
  readonly duty: 'controller' | 'post' | 'other'
  readonly fromAt: number
  readonly toAt: number
  /** The plan is the outline, the race fills it in. */
  readonly planned: boolean
}

export interface RibbonRow {
  readonly id: string
  readonly name: string
  readonly spans: readonly RibbonSpan[]
}

export interface RibbonBand {
  readonly id: string
  readonly fromAt: number
  readonly toAt: number
}

export interface RibbonShown {
  readonly view: RibbonView
  readonly nowAt: number
  /** `now, 14:01` */
  readonly nowWords: string
  readonly rows: readonly RibbonRow[]
  readonly stops: readonly { readonly id: string; readonly at: number; readonly done: boolean }[]
  readonly windows: readonly RibbonBand[]
  /** Power off. */
  readonly offs: readonly RibbonBand[]
  readonly faults: readonly RibbonBand[]
  readonly incidents: readonly { readonly id: string; readonly at: number }[]
  /** On fixed lanes: `3`, `–` for a sit-out, `?` where it is not drawn yet. */
  readonly lanes?: readonly (RibbonBand & { readonly word: string })[]
  /** Read aloud in its place. */
  readonly summary: string
}

export interface RibbonView {
  readonly fromAt: number
  readonly toAt: number
}

const HOUR_MS = 3_600_000
const EDGE_MS = 300_000
const BACK_MS = HOUR_MS
const SHOWN_MS = 4 * HOUR_MS

/**
 * What the ribbon looks at: an hour back and three ahead, pushed to where there is a race to see; or all of it.
 * Never empty.
 */
export function viewOf(race: RibbonView, nowAt: number, whole: boolean): RibbonView {
  const fromAt = Math.min(race.fromAt, nowAt) - EDGE_MS
  const toAt = Math.max(race.toAt, nowAt) + EDGE_MS
  if (whole || toAt - fromAt <= SHOWN_MS) return { fromAt, toAt }
  const begin = Math.min(Math.max(fromAt, nowAt - BACK_MS), toAt - SHOWN_MS)
  return { fromAt: begin, toAt: begin + SHOWN_MS }
}

/** Pixels from the left edge of a view that is `width` wide. */
export function across(view: RibbonView, width: number, at: number): number {
  return ((at - view.fromAt) / (view.toAt - view.fromAt)) * width
}

/** A band's left edge and width, cut to the view; undefined where it lies outside. */
export function placed(
  view: RibbonView,
  width: number,
  band: { readonly fromAt: number; readonly toAt: number },
): { readonly x: number; readonly width: number } | undefined {
  const x = across(view, width, Math.max(band.fromAt, view.fromAt))
  const end = across(view, width, Math.min(band.toAt, view.toAt))
  return end > x ? { x, width: Math.max(1, end - x) } : undefined
}

/** Full hours in view, thinned so that at most `most` are named. */
export function hoursIn(view: RibbonView, most: number): readonly number[] {
  const first = Math.ceil(view.fromAt / HOUR_MS)
  const last = Math.floor(view.toAt / HOUR_MS)
  const every = Math.max(1, Math.ceil((last - first + 1) / Math.max(1, most)))
  const hours: number[] = []
  for (let hour = first; hour <= last; hour += every) hours.push(hour * HOUR_MS)
  return hours
}
