import { rulesOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { SENTENCES } from '../sentences/index.ts'
import type { Look } from './ground.ts'

/** Rules that name segments the programme does not have. */
export const segmentsGone: Look = ({ rules, segments }) => {
  const there = new Set(segments.map(({ id }) => id))
  return [...rulesOf(rules, 'darkSegments'), ...rulesOf(rules, 'stopTask')]
    .filter(({ value }) => (known(value.segments) ?? []).some((id) => !there.has(id)))
    .map(({ id, kind }) => ({
      ...{ id: `segmentsGone:${id}`, rules: [id] },
      what: `${SENTENCES[kind].called}: a segment it names is gone from the programme.`,
      why: 'It cannot be done in a segment that is not run.',
    }))
}
