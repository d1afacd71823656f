import { durationInWords } from '../checks/in-words.ts'
import { rulesOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { Contradiction } from './contradiction.ts'
import { capital, timeOf, type Ground, type Look } from './ground.ts'

interface Window {
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
}

/** A window that ends before it begins, or lies outside its segment. */
export const windowsOutside: Look = (ground) =>
  rulesOf(ground.rules, 'stopWindows').flatMap(({ id, value }) =>
    (known(value.windows) ?? []).flatMap((window): Contradiction[] => {
      const why = whyNot(ground, window)
      if (why === undefined) return []
      const { segment, fromMs, toMs } = window
      const from = `${durationInWords(fromMs)} to ${durationInWords(toMs)}`
      const there = ground.segments.some((one) => one.id === segment)
      const where = there ? ` of ${ground.segmentName(segment)}` : ''
      const what = `The stop window from ${from}${where} cannot be used.`
      return [{ id: `windowsOutside:${id}:${window.id}`, rules: [id], what, why }]
    }),
  )

function whyNot(ground: Ground, { segment, fromMs, toMs }: Window): string | undefined {
  const item = ground.segments.find(({ id }) => id === segment)
  if (!item) return 'Its segment is gone from the programme.'
  if (toMs <= fromMs) return 'It ends before it begins.'
  const lengthMs = timeOf(item)
  if (lengthMs === undefined || toMs <= lengthMs) return undefined
  return `${capital(ground.segmentName(segment))} is over at ${durationInWords(lengthMs)}.`
}
