/** The wall's verbs: what each is called, and which lay a sheet on the wall before they record. */

export const WORD = {
  green: 'Green',
  powerOn: 'Power is on',
  powerOff: 'Power is off',
  redFlag: 'Red flag',
  segmentOver: 'Segment over',
  carIn: 'Car in',
  change: 'Change',
  duty: 'Take over a duty',
  deSlot: 'De-slot',
  wrongLane: 'Wrong lane',
  contact: 'Contact',
  stuck: 'Stuck',
  fault: 'Fault',
  setClock: 'Set clock',
  call: 'Call somebody',
  note: 'Note',
  said: 'Race control said',
  standing: 'Standing',
  work: 'Work',
  measure: 'Measure',
  whoIsHere: 'Who is here',
  lane: 'Lane',
  energy: 'Energy',
  more: 'More',
} as const
export type WallVerb = keyof typeof WORD

/** A fault's time is stamped as its sheet opens. */
const SHEET_VERBS = [
  'change',
  'duty',
  'fault',
  'setClock',
  'call',
  'note',
  'said',
  'standing',
  'work',
  'measure',
  'whoIsHere',
  'lane',
  'energy',
  'more',
] as const satisfies readonly WallVerb[]
export type SheetVerb = (typeof SHEET_VERBS)[number]

/** Sheets about one person, the stint, one fault or the car, opened from where these stand. */
export type WallSheetName = SheetVerb | 'person' | 'stint' | 'fit' | 'car'

export const SHEET_TITLE = {
  change: 'Change',
  duty: 'Take over a duty',
  fault: 'The time is noted. What is it?',
  setClock: 'The hall’s clock',
  call: 'Call somebody',
  note: 'Note',
  more: 'More',
  said: 'Race control said',
  standing: 'What the venue’s screen shows',
  work: 'Work',
  measure: 'Measure',
  whoIsHere: 'Who is here',
  lane: 'Which lane',
  energy: 'Energy',
  fit: 'Fit a part or tyre set',
  stint: 'Stay out',
  car: 'The car',
  person: 'Somebody in the crew',
} as const satisfies Record<WallSheetName, string>

export function isSheet(verb: string): verb is SheetVerb {
  return SHEET_VERBS.some((name) => name === verb)
}
