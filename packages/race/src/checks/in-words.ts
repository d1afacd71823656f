/** Figures as sentences say them. */
import { plural } from '../sentences/plural.ts'

/** `1:15` for hours and minutes, `0:40`, and `0:00:45` where seconds count. */
export function durationInWords(ms: number): string {
  const seconds = Math.round(Math.abs(ms) / 1_000)
  const minutes = Math.floor(seconds / 60)
  const text = `${Math.floor(minutes / 60)}:${two(minutes % 60)}`
  return seconds % 60 === 0 ? text : `${text}:${two(seconds % 60)}`
}

/** `60 %`, `12.5 %`. */
export function shareInWords(perMille: number): string {
  const whole = Math.trunc(perMille / 10)
  const tenths = Math.abs(perMille % 10)
  return tenths === 0 ? `${whole} %` : `${whole}.${tenths} %`
}

/** `one stop`, `3 stops`. */
export function countInWords(count: number, one: string, many = `${one}s`): string {
  const figure = count === 0 ? 'no' : count === 1 ? 'one' : String(count)
  return `${figure} ${plural(count, one, many)}`
}

/** `there is one stop`, `there are 3 stops`. */
export function thereAre(count: number, one: string, many = `${one}s`): string {
  return `there ${plural(count, 'is', 'are')} ${countInWords(count, one, many)}`
}

function two(value: number): string {
  return value < 10 ? `0${value}` : String(value)
}
