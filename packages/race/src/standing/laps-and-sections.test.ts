import { expect, test } from 'vitest'
import { addDistance, gapBetween } from './laps-and-sections.ts'

test('L44: sections are added in sections, never as decimals', () => {
  // Of 50 sections: 35 + 40 = 75 are a lap and 25.
  const a = { laps: 10, sections: 35 }
  const b = { laps: 10, sections: 40 }
  expect(addDistance(a, b, 50)).toEqual({ laps: 21, sections: 25 })
  // A full lap of sections is a lap.
  expect(addDistance(a, { laps: 0, sections: 15 }, 50)).toEqual({ laps: 11, sections: 0 })
  expect(addDistance(a, { laps: -2, sections: -40 }, 50)).toEqual({ laps: 7, sections: 45 })
})

test('L44: a gap is laps and sections too', () => {
  const us = { laps: 412, sections: 35 }
  expect(gapBetween({ laps: 413, sections: 10 }, us, 50)).toEqual({ laps: 0, sections: 25 })
  expect(gapBetween(us, { laps: 410, sections: 40 }, 50)).toEqual({ laps: 1, sections: 45 })
  // 25 behind of 50 is −1 lap and 25 forwards.
  expect(gapBetween(us, { laps: 413, sections: 10 }, 50)).toEqual({ laps: -1, sections: 25 })
})

test('L44: without the track’s sections none is carried, and none is borrowed', () => {
  const us = { laps: 412, sections: 35 }
  expect(addDistance(us, { laps: 1, sections: 40 })).toEqual({ laps: 413, sections: 75 })
  expect(gapBetween({ laps: 413, sections: 10 }, us)).toEqual({ laps: 0 })
  expect(gapBetween({ laps: 413, sections: 40 }, us)).toEqual({ laps: 1, sections: 5 })
})

test('sections that only one has are not known of both', () => {
  expect(addDistance({ laps: 4 }, { laps: 5, sections: 3 }, 50)).toEqual({ laps: 9 })
  expect(gapBetween({ laps: 4, sections: 3 }, { laps: 5 }, 50)).toEqual({ laps: -1 })
})
