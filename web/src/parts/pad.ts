/** A clock typed on a number pad: digits fill from the right, as on a kitchen timer. */

/** Hours, minutes and seconds, two each. */
const PAD_DIGITS = 6

/** `7246` reads `0:72:46`; nothing typed reads `0:00:00`. */
export function padText(digits: string): string {
  const { hours, minutes, seconds } = split(digits)
  return `${Number(hours)}:${minutes}:${seconds}`
}

/**
 * Milliseconds, or undefined while the digits are no clock: none typed, seconds above 59, or minutes above 59
 * beside hours. Minutes alone may pass 59, since halls show `72:46` as well as `1:12:46`.
 */
export function padMs(digits: string): number | undefined {
  if (!/^\d{1,6}$/.test(digits)) return undefined
  const parts = split(digits)
  const hours = Number(parts.hours)
  const minutes = Number(parts.minutes)
  const seconds = Number(parts.seconds)
  if (seconds > 59 || (hours > 0 && minutes > 59)) return undefined
  return ((hours * 60 + minutes) * 60 + seconds) * 1000
}

/** More digits on the right; what a full pad has no room for and leading noughts are dropped. */
export function padPush(digits: string, typed: string): string {
  return (digits + typed).replace(/^0+/, '').slice(0, PAD_DIGITS)
}

function split(digits: string) {
  const full = digits.padStart(PAD_DIGITS, '0')
  return { hours: full.slice(0, -4), minutes: full.slice(-4, -2), seconds: full.slice(-2) }
}
