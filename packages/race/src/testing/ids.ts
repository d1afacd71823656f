/** Ids a reader can tell apart: `id(7)` is entry 7, `person('Okello')` the same in every test. */
export function id(number: number): string {
  return uuid('1', number)
}

export const PEOPLE = {
  Solveig: uuid('2', 1),
  Okello: uuid('2', 2),
  Tamsin: uuid('2', 3),
  Imre: uuid('2', 4),
} as const

export const DEVICES = {
  wall: uuid('3', 1),
  otherWall: uuid('3', 2),
  phone: uuid('3', 3),
} as const

function uuid(family: string, number: number): string {
  return `019b0000-000${family}-7000-8000-${number.toString(16).padStart(12, '0')}`
}
