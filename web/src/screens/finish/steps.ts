/** What comes after the flag, in order and in words, and what each step still asks for. */
import type { AfterStep, AfterTheFlag } from '@pitlamp/race'
import { milliText } from '../../parts/pad-number.ts'
import { clockTime, countdown } from '../../parts/time.ts'

export interface StepShown {
  readonly what: AfterStep['what']
  readonly title: string
  /** What became of it, or what it waits for. */
  readonly words: string
  readonly state: AfterStep['state']
  /** The first that is still to come. */
  readonly next: boolean
  /** Protest time only: 1 to 0 for the wick, and what is left. */
  readonly left?: number
  readonly figure?: string
}

const TITLE = {
  scrutineering: 'Final scrutineering',
  weighing: 'Weighing',
  provisionalResult: 'Provisional result',
  protestTime: 'Protest time',
  officialResult: 'Official result',
  released: 'Car released',
} as const satisfies Record<AfterStep['what'], string>

const WAITS = {
  scrutineering: 'the car stays closed until it has been seen',
  weighing: 'as the scales show it',
  provisionalResult: 'as the venue’s screen shows it',
  protestTime: '',
  officialResult: 'once protest time is over',
  released: 'until then nobody opens it',
} as const satisfies Record<AfterStep['what'], string>

export function stepsShown(
  { steps, next }: AfterTheFlag,
  { now, timeZone }: { readonly now: number; readonly timeZone: string },
): readonly StepShown[] {
  const protest = steps.find(({ what, state }) => what === 'protestTime' && state === 'counting')
  return steps.map((step) => ({
    what: step.what,
    title: TITLE[step.what],
    words: waitsForProtest(step, protest, timeZone) ?? wordsOf(step, timeZone),
    state: step.state,
    next: step.what === next,
    ...burning(step, now),
  }))
}

function waitsForProtest(
  { what, state }: AfterStep,
  protest: AfterStep | undefined,
  timeZone: string,
): string | undefined {
  if (what !== 'officialResult' || state !== 'wanted' || !protest) return undefined
  return `protest time runs ${protestWords(protest, timeZone)}`
}

function wordsOf(step: AfterStep, timeZone: string): string {
  const at = step.at === undefined ? '' : ` ${clockTime(step.at, timeZone)}`
  switch (step.what) {
    case 'scrutineering':
      if (step.state === 'wanted') return WAITS.scrutineering
      if (step.state === 'failed') return `failed${at}`
      return `${step.advice ? 'passed with advice' : 'passed'}${at}`
    case 'weighing':
      return step.valueMilli === undefined ? WAITS.weighing : `${milliText(step.valueMilli)} g${at}`
    case 'protestTime':
      return protestWords(step, timeZone)
    default:
      return step.state === 'wanted' ? WAITS[step.what] : at.trim()
  }
}

function protestWords({ state, until }: AfterStep, timeZone: string): string {
  if (state === 'done') return 'over'
  return until === undefined ? '' : `until ${clockTime(until, timeZone)}`
}

function burning({ state, at, until }: AfterStep, now: number): Pick<StepShown, 'left' | 'figure'> {
  if (state !== 'counting' || at === undefined || until === undefined) return {}
  return { left: (until - now) / Math.max(1, until - at), figure: countdown(until - now) }
}
