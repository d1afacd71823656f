/** Parts of a rule that are typed: as they are written, read, and how to write them. */
import type { Part } from '@pitlamp/race'
import { hoursMinutes } from '../../parts/time.ts'
import { readDuration } from '../../planning/durations.ts'

export type TypedPart = Exclude<Part['is'], 'segments' | 'windows' | 'yesNo' | 'choice' | 'choices'>

interface Typed {
  readonly write: (value: unknown) => string
  /** Undefined for what cannot be read. */
  readonly read: (text: string, plain: 's' | 'min') => unknown
  readonly hint: string
}

const SECONDS_BELOW_MS = 120_000
const MINUTES_BELOW_MS = 1_800_000
const DAY_MINUTES = 1_440
const MINUTE_MS = 60_000

const TYPED: Readonly<Record<TypedPart, Typed>> = {
  duration: {
    write: (value) => lengthText(Number(value)),
    read: readDuration,
    hint: '1:15, 10 min or 45 s',
  },
  count: { write: String, read: readCount, hint: 'a number' },
  share: {
    write: (value) => `${Number(value) / 10} %`,
    read: readShare,
    hint: 'a share, as 60 %',
  },
  words: { write: String, read: readName, hint: 'a few words' },
  category: { write: String, read: readName, hint: 'a category, as novice' },
  clockTime: {
    write: (value) => clockText(Number(value)),
    read: readClockTime,
    hint: 'a time of day, as 22:30',
  },
  counts: {
    write: (value) => (Array.isArray(value) ? value.join(', ') : ''),
    read: readCounts,
    hint: 'numbers, as 25, 18, 15',
  },
  names: {
    write: (value) => (Array.isArray(value) ? value.join(', ') : ''),
    read: readNames,
    hint: 'names, as red, white, blue',
  },
}

export function isTyped(is: Part['is']): is is TypedPart {
  return is in TYPED
}

export function writePart(is: TypedPart, value: unknown): string {
  return TYPED[is].write(value)
}

/** Undefined for what cannot be read, and for nothing typed. */
export function readPart({ is, plain }: Pick<Part, 'is' | 'plain'>, text: string): unknown {
  const typed = text.trim()
  return isTyped(is) && typed !== ''
    ? TYPED[is].read(typed, plain === 's' ? 's' : 'min')
    : undefined
}

export function hintFor({ is, plain }: Part): string {
  if (is === 'duration' && plain === 's') return '45 s or 1:30'
  return isTyped(is) ? TYPED[is].hint : ''
}

/** Seconds below two minutes, minutes below half an hour, then hours and minutes. */
function lengthText(ms: number): string {
  if (ms < SECONDS_BELOW_MS) return `${ms / 1_000} s`
  if (ms < MINUTES_BELOW_MS && ms % MINUTE_MS === 0) return `${ms / MINUTE_MS} min`
  return hoursMinutes(ms)
}

function readCount(text: string): number | undefined {
  return /^\d{1,6}$/.test(text) ? Number(text) : undefined
}

function readShare(text: string): number | undefined {
  const [, whole, tenths = '0'] = /^(\d{1,3})(?:[.,](\d))?\s*%?$/.exec(text) ?? []
  const perMille = Number(whole) * 10 + Number(tenths)
  return perMille <= 1_000 ? perMille : undefined
}

function readName(text: string): string {
  return text.slice(0, 80)
}

function readClockTime(text: string): number | undefined {
  const [, hours, minutes] = /^(\d{1,2})[:.]([0-5]\d)$/.exec(text) ?? []
  const inMinutes = Number(hours) * 60 + Number(minutes)
  return inMinutes < DAY_MINUTES ? inMinutes * MINUTE_MS : undefined
}

function clockText(ms: number): string {
  const minutes = Math.floor(ms / MINUTE_MS)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`
}

function readCounts(text: string): readonly number[] | undefined {
  const numbers = text
    .split(/[,;\s]+/)
    .filter((one) => one !== '')
    .map(readCount)
  return numbers.length <= 100 && numbers.every((one) => one !== undefined) ? numbers : undefined
}

function readNames(text: string): readonly string[] | undefined {
  const names = text
    .split(/[,;]+/)
    .map((one) => one.trim())
    .filter((one) => one !== '')
  const fit = names.length > 0 && names.length <= 40 && names.every((one) => one.length <= 80)
  return fit ? names : undefined
}
