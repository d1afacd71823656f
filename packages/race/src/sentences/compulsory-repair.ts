import type { Sentence } from './sentence.ts'

export const compulsoryRepair: Sentence<'compulsoryRepair'> = {
  group: 'repairs',
  called: 'Must be mended',
  reads:
    '{what}: mended[ within {laps} <lap|laps>][ within {withinMs}][ {until}], {underGreen}[, {when}][; the first time {firstTime}][; a loss caused by others {causedByOthers}][; {elseAtStop} else is done at that stop][; −{costLaps} <lap|laps> for each lap after that].',
  words: {
    until: { laneChange: 'by the next lane change', atOnce: 'at once' },
    underGreen: { true: 'only under green', false: 'whenever work is allowed' },
    firstTime: { laneChange: 'by the next lane change', sameLimit: 'the same limit' },
    causedByOthers: { asFirst: 'counts as a first one', sameLimit: 'is no excuse' },
    elseAtStop: { nothing: 'nothing', anything: 'anything' },
    when: { wholeRace: 'in the whole race', darkSegments: 'in dark segments only' },
  },
  asks: {
    laps: 'Within how many laps must it be mended?',
    withinMs: 'Within which time must it be mended?',
    until: 'Until when must it be mended?',
    underGreen: 'Must it be mended under green?',
    firstTime: 'Is the first time milder?',
    causedByOthers: 'What if a marshal or another car caused it?',
    elseAtStop: 'May anything else be done at that stop?',
    costLaps: 'What does each lap beyond the limit cost?',
    when: 'Must it be mended in dark segments only?',
  },
  start: { what: 'Wing', laps: 'notKnownYet', underGreen: 'notKnownYet' },
}
