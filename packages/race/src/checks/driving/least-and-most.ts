/** What rules that say at least, at most, or both have in common. */
import { known, type NotKnownYet } from '../../rules/shape.ts'
import type { Case, Limit } from '../case.ts'

type Asked = number | NotKnownYet | undefined

export const SENSES: Readonly<Record<Case['sense'], string>> = {
  atLeast: 'at least',
  atMost: 'at most',
}

/** Its two limits; nothing for one that is absent or not known yet. `called` is said with the sense after it. */
export function leastAndMost(
  called: string,
  of: { readonly atLeast: Asked; readonly atMost: Asked },
  cases: (sense: Case['sense'], limit: number) => readonly Case[],
): readonly Limit[] {
  return (['atLeast', 'atMost'] as const).flatMap((sense): Limit[] => {
    const limit = known(of[sense])
    if (limit === undefined) return []
    return [{ name: sense, called: `${called} ${SENSES[sense]}`, cases: cases(sense, limit) }]
  })
}

/** What is owed at the end can be made good until then; what is too much cannot. */
export function whileItLasts(sense: Case['sense']): Pick<Case, 'untilTheEnd'> {
  return sense === 'atLeast' ? { untilTheEnd: true } : {}
}
