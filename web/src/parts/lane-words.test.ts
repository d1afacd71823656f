import { expect, test } from 'vitest'
import { laneWords, stickerOf } from './lane-words.ts'

test('a lane is said by number, track and colour', () => {
  expect(laneWords({ lane: 5 })).toBe('lane 5')
  expect(laneWords({ lane: 5, colour: 'white' })).toBe('lane 5, white')
  expect(laneWords({ lane: 2, track: 3, colour: 'red' })).toBe('lane 2 of track 3, red')
  expect([laneWords('sitOut'), laneWords('notDrawnYet')]).toEqual(['sit-out', 'not drawn yet'])
})

test('a sticker has the colours that can be drawn, and none for other words', () => {
  expect([stickerOf('White'), stickerOf(' violet '), stickerOf('gray')]).toEqual([
    ...['white', 'purple', 'grey'],
  ])
  expect([stickerOf('petrol'), stickerOf(undefined)]).toEqual([undefined, undefined])
})
