/** Numbers typed on a pad: counts, and readings with one decimal point. Never a float: thousandths are whole. */

const COUNT_DIGITS = 5
const WHOLE_DIGITS = 5
/** Thousandths: a gauge shows no more. */
const DECIMALS = 3

/** More digits on the right; leading noughts and what has no room are dropped. */
export function countPush(digits: string, typed: string): string {
  return (digits + typed).replace(/^0+(?=\d)/, '').slice(0, COUNT_DIGITS)
}

/** Undefined while nothing is typed. */
export function countOf(digits: string): number | undefined {
  return digits === '' ? undefined : Number(digits)
}

/** Digits and one point; a point first is one after a nought, a second one is dropped. */
export function decimalPush(text: string, typed: string): string {
  const next = (text + typed).replace(/^\./, '0.').replace(/^0+(?=\d)/, '')
  const [whole = '', decimals, ...more] = next.split('.')
  const fits = whole.length <= WHOLE_DIGITS && (decimals ?? '').length <= DECIMALS
  return fits && more.length === 0 ? next : text
}

/** Whole thousandths: `1.05` reads 1050. Undefined while nothing is typed. */
export function milliOf(text: string): number | undefined {
  if (text === '') return undefined
  const [whole = '', decimals = ''] = text.split('.')
  return Number(whole) * 1_000 + Number(decimals.padEnd(DECIMALS, '0'))
}

/** As a gauge shows it: 1050 reads `1.05`. */
export function milliText(valueMilli: number): string {
  const size = Math.abs(valueMilli)
  const decimals = String(size % 1_000).padStart(DECIMALS, '0')
  const text = `${Math.floor(size / 1_000)}.${decimals}`.replace(/\.?0+$/, '')
  return valueMilli < 0 ? `−${text}` : text
}
