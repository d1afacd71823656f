import { rulesOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { SENTENCES } from '../sentences/index.ts'
import { capital, type Look } from './ground.ts'

/** Only the minimum stop can start again. */
export const clockStartsAgain: Look = ({ rules }) =>
  rulesOf(rules, 'clockPolicy')
    .filter(({ value }) => known(value.does) === 'startsAgain' && value.clock !== 'stopMinimum')
    .map(({ id, value: { clock } }) => ({
      ...{ id: `clockStartsAgain:${id}`, rules: [id] },
      what: `${capital(SENTENCES.clockPolicy.words?.clock?.[clock] ?? 'The clock')} cannot start again.`,
      why: 'Only the minimum stop can. It is read as running on; write that it runs on or holds.',
    }))
