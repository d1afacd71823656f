import { fold, readEntry } from '@pitlamp/race'
import { readCopy, writeCopy } from '@pitlamp/contract'
import { describe, expect, it } from 'vitest'
import { inLog, note, phone, screen } from '../log/entries.fixture.ts'
import { view } from '../log/view.ts'
import { about } from './copies.fixture.ts'
import { copyOf } from './copy-of.ts'

const state = screen({
  confirmed: [inLog(1, note(1)), inLog(2, note(1, { device: phone }))],
  pending: [{ entry: note(3) }, { entry: note(2), recorded: inLog(3, note(2)) }],
  setAside: [
    { entry: note(4), why: 'roleMayNot' },
    { entry: note(5), why: 'keepsFailing' },
    { entry: note(2, { device: phone }), why: 'notInServersLog' },
  ],
  heardOf: 7,
})

describe('a copy of a meeting', () => {
  it('S32: holds what was recorded as it was, and what was not with the role it has', () => {
    const { recorded, unsent, meeting } = copyOf(state, about())
    expect(recorded).toEqual([
      inLog(1, note(1)),
      inLog(2, note(1, { device: phone })),
      inLog(3, note(2)),
    ])
    expect(unsent).toEqual([
      { entry: note(3), role: 'pitWall' },
      { entry: note(4), role: 'pitWall', refused: 'roleMayNot' },
      { entry: note(5), role: 'pitWall' },
      { entry: note(2, { device: phone }) },
    ])
    // Three are here; the server spoke of seven.
    expect(meeting.lastSeq).toBe(7)
  })

  it('S32: holds all that its screen folds, and survives being written and read', () => {
    const written = copyOf(state, about())
    const read = readCopy(writeCopy(written))
    expect(read).toEqual({ copy: written })
    const { recorded, unsent } = written
    const taken = [...recorded, ...unsent.flatMap(({ entry, refused }) => (refused ? [] : [entry]))]
    expect(fold(taken.map(readEntry))).toEqual(fold(view(state).map(readEntry)))
  })
})
