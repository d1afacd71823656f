import { expect, test } from 'vitest'
import { running, START, MINUTE, type PaperLog } from '../screens/fixture/paper-log.ts'
import { PaperMeeting } from '../screens/fixture/paper-meeting.svelte.ts'
import { lastStopVerdict } from './stop-verdict.ts'

const SECOND = 1 / 60

/** Stopped at 11:40:00 for its planned stop, left so many seconds later. The minimum is 45 s. */
function stoppedFor(seconds: number, log = running()): PaperLog {
  log.add(40, 'stopIn.1', { moment: 'stopped', planned: 's1p1' })
  log.add(40 + seconds * SECOND, 'stopOut.1', { moment: 'leaving' })
  return log
}

function verdictAt(log: PaperLog, seconds: number) {
  const { state } = new PaperMeeting(log, 40)
  return lastStopVerdict(state, START + 40 * MINUTE + seconds * 1_000)
}

test('a car that left early is told by how much, and that no rule names the cost', () => {
  // 45 − 42 = 3 s short.
  expect(verdictAt(stoppedFor(42), 60)).toMatchObject({
    verdict: 'early',
    words: 'Left 3 s early, 42 s of 45 s.',
    cost: 'What that costs is not in the rules: ask race control.',
  })
})

test('a car that left late lost the time and nothing else', () => {
  // 48.5 − 45 = 3.5 s.
  expect(verdictAt(stoppedFor(48.5), 60)).toMatchObject({
    verdict: 'late',
    words: 'Left 3.5 s after the minimum, 48.5 s of 45 s.',
    cost: 'The rules ask nothing for that: it cost the time.',
  })
})

test('a car that left on the second cost nothing', () => {
  const shown = verdictAt(stoppedFor(45), 60)
  expect(shown).toMatchObject({ verdict: 'exact', words: 'Left on the minimum, 45 s of 45 s.' })
  expect(shown?.cost).toBeUndefined()
})

test('it stands for three minutes after the car left, and not while it is in', () => {
  const log = stoppedFor(45)
  expect(verdictAt(log, 45 + 180)).toBeDefined()
  expect(verdictAt(log, 45 + 181)).toBeUndefined()
  log.add(41, 'stopIn.1', { moment: 'stopped' })
  expect(verdictAt(log, 62)).toBeUndefined()
})

test('where a counted moment is missing it says which', () => {
  const log = running()
  log.add(40, 'stopIn.1', { moment: 'pitEntry', planned: 's1p1' })
  log.add(41, 'stopOut.1', { moment: 'leaving' })
  expect(verdictAt(log, 70)?.words).toBe(
    'How long the stop was cannot be told: stopped was not recorded.',
  )
})

test('a stop the rules do not ask for has no minimum', () => {
  // 72 s is over a minute.
  const log = running('rules')
  expect(verdictAt(stoppedFor(72, log), 80)?.words).toBe('The stop took 1:12.')
})
