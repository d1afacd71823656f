import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fold } from '../fold/fold.ts'
import { DEVICES, id, PEOPLE } from '../testing/ids.ts'
import { GREEN, Pressing, problemKinds } from '../testing/pressing.ts'

const note = (pressing: Pressing) => pressing.press(GREEN, 'note.1', { words: 'First said' })

type Change = { what: 'void' } | { what: 'replace'; at?: number; body?: unknown; apart?: true }

/** `after` is the correction it follows, where it is not the first. */
function correct(pressing: Pressing, target: string, how: Change & { after?: string }): string {
  const { after = target, ...change } = how
  return pressing.press(GREEN + 60_000, 'correction.1', correctionBody(target, change, after))
}

function correctionBody(target: string, change: Change, basedOn: string) {
  return { target, basedOn, change, reason: 'Pressed by mistake' }
}

test('L9: a void takes an entry out, an empty replacement brings it back', () => {
  const pressing = new Pressing()
  const said = note(pressing)
  const first = correct(pressing, said, { what: 'void' })
  const voided = pressing.state()
  expect(voided.record.notes).toEqual([])
  expect(voided.record.log[0]).toMatchObject({ standing: 'voided', basedOn: first })
  correct(pressing, said, { what: 'replace', after: first })
  const restored = pressing.state()
  expect(restored.record.notes).toMatchObject([{ entry: said, at: GREEN }])
  expect(restored.record.log[0]).toMatchObject({ standing: 'holds', reason: 'Pressed by mistake' })
  expect(restored.problems).toEqual([])
})

test('L9: the last correction holds alone, so that what it does not name is as first recorded', () => {
  const pressing = new Pressing()
  const said = note(pressing)
  const first = correct(pressing, said, { what: 'replace', body: { words: 'Then said' } })
  correct(pressing, said, { what: 'replace', at: GREEN - 5_000, after: first })
  const { record } = pressing.state()
  expect(record.notes).toEqual([{ entry: said, at: GREEN - 5_000, body: { words: 'First said' } }])
  expect(record.log[0]?.standing).toBe('corrected')
})

test('L9: a corrected body is what holds, and the line keeps what was recorded beside it', () => {
  const pressing = new Pressing()
  const said = note(pressing)
  correct(pressing, said, { what: 'replace', body: { words: 'Then said' } })
  const { record } = pressing.state()
  expect(record.notes[0]?.body.words).toBe('Then said')
  expect(record.log[0]?.entry).toMatchObject({ body: { words: 'First said' } })
  expect(record.log[0]?.corrected).toMatchObject({ id: said, body: { words: 'Then said' } })
})

test('L9: corrections made on three devices give one state in whatever order they arrive', () => {
  const pressing = new Pressing()
  const said = note(pressing)
  const green = pressing.press(GREEN, 'green.1', { segment: 'one' })
  const devices = Object.values(DEVICES)
  devices.forEach((device, place) => {
    const at = GREEN + 60_000 + place
    const body = { words: `Said on ${place}` }
    const change = { what: 'replace', body } as const
    pressing.by({ device }).press(at, 'correction.1', correctionBody(said, change, said))
    const moved = { what: 'replace', at: GREEN - place * 1_000 } as const
    pressing.by({ device }).press(at, 'correction.1', correctionBody(green, moved, green))
  })
  const { entries } = pressing
  const inOrder = fold(entries)
  expect(inOrder.record.notes[0]?.body.words).toBe('Said on 2')
  expect(inOrder.raceControl.runs[0]?.greenAt).toBe(GREEN - 2_000)
  fc.assert(
    fc.property(fc.shuffledSubarray([...entries], { minLength: entries.length }), (arrived) => {
      expect(fold(arrived)).toEqual(inOrder)
    }),
  )
})

test('L2: a time set by a correction counts as it is and moves the entry in the order', () => {
  const pressing = new Pressing()
  const early = pressing.press(GREEN, 'note.1', { words: 'Early' })
  const late = pressing.press(GREEN + 10_000, 'note.1', { words: 'Late' })
  correct(pressing, late, { what: 'replace', at: GREEN - 10_000 })
  expect(pressing.state().record.notes.map((said) => said.entry)).toEqual([late, early])
})

test('L10: two corrections made unaware of each other are listed, and the later one holds', () => {
  const pressing = new Pressing()
  const said = note(pressing)
  const one = correct(pressing, said, { what: 'void' })
  const other = correct(pressing, said, { what: 'replace', body: { words: 'Kept' } })
  const state = pressing.state()
  expect(state.record.notes[0]?.body.words).toBe('Kept')
  expect(state.problems).toMatchObject([{ kind: 'correctionClash', entries: [said, one, other] }])
})

test('L11: a correction of nothing, or of a correction, is listed and changes nothing', () => {
  const pressing = new Pressing()
  const said = note(pressing)
  const lost = correct(pressing, id(99), { what: 'void' })
  const voided = correct(pressing, said, { what: 'void' })
  const ofCorrection = correct(pressing, voided, { what: 'void' })
  const state = pressing.state()
  expect(state.record.notes).toEqual([])
  expect(state.problems.map(({ kind, entries }) => [kind, ...entries])).toEqual([
    ['correctionAstray', lost],
    ['correctionAstray', ofCorrection],
  ])
})

test('L12: a replacement that does not fit is listed and changes nothing, but keeps its place', () => {
  const pressing = new Pressing()
  const said = note(pressing)
  const first = correct(pressing, said, { what: 'replace', body: { words: 'Then said' } })
  const misfit = correct(pressing, said, {
    what: 'replace',
    body: { person: PEOPLE.Imre },
    after: first,
  })
  const state = pressing.state()
  expect(state.record.notes[0]?.body.words).toBe('Then said')
  expect(state.record.log[0]?.basedOn).toBe(misfit)
  expect(state.problems).toMatchObject([{ kind: 'unread', entries: [said, misfit] }])
})

test('L12: a body that fits mends an entry whose own did not', () => {
  const pressing = new Pressing()
  const broken = pressing.pressAnything(GREEN, 'note.1', '{"words":')
  expect(problemKinds(pressing.state())).toEqual(['unread'])
  correct(pressing, broken, { what: 'replace', body: { words: 'Mended' } })
  const state = pressing.state()
  expect(state.record.notes[0]?.body.words).toBe('Mended')
  expect(state.problems).toEqual([])
})
