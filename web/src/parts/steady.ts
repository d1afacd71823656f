/**
 * A countdown that keeps its width: `6:12` of `45:00` is shown as `06:12`, so that nothing on the screen
 * moves when a digit falls away.
 */
export function steady(text: string, longest: string): string {
  let wide = text
  while (wide.length < longest.length) {
    const place = longest.at(-1 - wide.length)
    wide = (place === ':' ? ':' : '0') + wide
  }
  return wide
}
