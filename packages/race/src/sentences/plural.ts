/** One of a thing and several of it: the one place that decides between *lap* and *laps*. */

/** `lap` for one, in either direction; `laps` for none, several and parts of one. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return count === 1 || count === -1 ? one : many
}

/** `1 lap`, `−1 lap`, `0 laps`, `2 laps`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count < 0 ? `−${-count}` : String(count)} ${plural(count, one, many)}`
}

const EITHER = /<([^|>]*)\|([^>]*)>/g

/** `{laps} <lap|laps>` with the number it stands beside; several where that is not known. */
export function withNumber(text: string, count?: unknown): string {
  const number = typeof count === 'number' ? count : 2
  return text.replaceAll(EITHER, (_, one: string, many: string) => plural(number, one, many))
}
