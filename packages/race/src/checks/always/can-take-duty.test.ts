import { expect, test } from 'vitest'
import { drive, found, marshal, span } from '../testing/judging.ts'
import { sentences } from '../testing/verdicts.ts'

type By = Parameters<typeof found>[0]
const judge = (name: string, by: By) => found(by).filter(({ id }) => id.startsWith(`${name}:`))

test('everybody can take their duty; off duty anybody can be', () => {
  const off = span({ person: 'Ana', duty: 'offDuty' }, 50, 60)
  const spans = [drive('Ana', 0, 30), marshal('Ana', 30, 50), off]
  expect(judge('canTakeDuty', { spans })).toEqual([])
  expect(judge('canTakeDuty', { spans, duties: { Ana: ['controller', 'post'] } })).toEqual([])
  expect(sentences(judge('canTakeDuty', { spans, duties: { Ana: ['post'] } }))).toEqual([
    'Ana drives from 0:00 to 0:30 of segment 1, which the crew list does not have Ana do.',
  ])
})
