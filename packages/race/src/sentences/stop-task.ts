import type { Sentence } from './sentence.ts'

export const stopTask: Sentence<'stopTask'> = {
  group: 'stops',
  called: 'Task to be done',
  reads: '{task}: {times} <time|times>[ in {segments}][ with the power {power}].',
  words: { power: { on: 'on', off: 'off' } },
  asks: {
    times: 'How often must the task be done?',
    segments: 'In which segments must the task be done?',
    power: 'Must the power be on or off for the task?',
  },
  start: { task: 'Motor change', times: 1 },
}
