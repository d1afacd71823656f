/**
 * Every verb of the pit wall in every phase, and the shortest way to it: what is pressed, the digits typed on a pad
 * before the last press, and what the wall says was recorded.
 */

export interface Way {
  readonly verb: string
  /** A verb of the bar by its word, anything else by the name of its button. */
  readonly presses: readonly (string | { readonly button: string | RegExp })[]
  readonly digits?: string
  /** As its undo calls it. */
  readonly says: string
  /** Not of this phase's list: one press more, since it stands behind More. */
  readonly behindMore?: true
}

const button = (name: string | RegExp) => ({ button: name })
const bea = button(/^Bea Lorne/)

const note: Way = {
  verb: 'Note',
  presses: ['Note', button('Power sags')],
  says: 'Note',
}
const fault: Way = { verb: 'Fault', presses: ['Fault', button('Braid')], says: 'Fault' }
const setClock: Way = {
  verb: 'Set clock',
  presses: ['Set clock', button('It shows this now')],
  digits: '3400',
  says: 'Clock',
}
const whoIsHere: Way = {
  verb: 'Who is here',
  presses: ['Who is here', button('unwell')],
  says: 'Unwell',
}
const change: Way = {
  verb: 'Change',
  presses: [button(/^Change/), button('Record the change')],
  says: 'Change',
}
const lane: Way = { verb: 'Lane', presses: ['Lane', button('Lane 3')], says: 'Lane 3' }

/** On a person: they are pressed in the column at the left. */
const people: readonly Way[] = [
  { verb: 'Late until', presses: [bea, button(/^late for ?20 min$/)], says: 'Late' },
  { verb: 'Away', presses: [bea, button('Away')], says: 'Away' },
  { verb: 'Here', presses: [bea, button('Here')], says: 'Here' },
  { verb: 'Call somebody', presses: [bea, button('Go and rest')], says: 'Call' },
  {
    verb: 'Wake-up call',
    presses: [bea, button(/^Wake-up call in ?30 min$/)],
    says: 'Wake-up call in 30 min',
  },
  { verb: 'Take over a duty', presses: [bea, button('Bench')], says: 'Duty' },
]
const raceControl: readonly Way[] = [
  { verb: 'Warning', presses: ['Race control said', button('Warning')], says: 'Penalty, Warning' },
  {
    verb: 'Laps taken',
    presses: ['Race control said', button('−2 laps')],
    digits: '2',
    says: 'Penalty, 2 laps',
  },
  {
    verb: 'Laps corrected',
    presses: ['Race control said', button('+2 laps')],
    digits: '2',
    says: 'Laps corrected',
  },
  { verb: 'Programme', presses: ['Race control said', button('10 min')], says: '10 min later' },
  {
    verb: 'Ruling',
    presses: ['Race control said', button('Hands off the car')],
    says: 'Ruling',
  },
]
const energy: readonly Way[] = [
  { verb: 'Filled', presses: [button('Filled')], says: 'Filled' },
  {
    verb: 'Energy',
    presses: [button('Read'), button(/^40 laps left/)],
    digits: '40',
    says: 'Energy',
  },
]
const standing: Way = {
  verb: 'Standing',
  presses: [button('not read'), button('It shows this now')],
  digits: '3›120',
  says: 'Standing',
}
const fromMore = (word: string, says = word): Way => ({
  verb: word,
  presses: ['More', button(word)],
  says,
})
const tyres: Way = {
  verb: 'Fit a part',
  presses: ['More', button(/^Tyre set/)],
  says: 'Tyre set fitted',
}

export const WAYS: Readonly<Record<'before' | 'green' | 'powerOff' | 'between', readonly Way[]>> = {
  before: [
    { verb: 'Green', presses: ['Green'], says: 'Green' },
    lane,
    whoIsHere,
    fault,
    note,
    change,
    tyres,
    {
      verb: 'Measure',
      presses: ['More', button('Measure'), button(/^Clearance/)],
      digits: '1.05',
      says: 'Clearance 1.05 mm',
      behindMore: true,
    },
  ],
  green: [
    { verb: 'Car in', presses: ['Car in'], says: 'Car in' },
    change,
    { verb: 'De-slot', presses: ['De-slot'], says: 'De-slot' },
    fault,
    { verb: 'Power is off', presses: ['Power is off'], says: 'Power off' },
    ...raceControl,
    standing,
    ...people,
    { ...setClock, presses: [button(/Set clock$/), button('It shows this now')] },
    { ...note, presses: [button('Note'), button('Power sags')] },
    fromMore('Segment over'),
    fromMore('Red flag'),
    fromMore('Wrong lane'),
    fromMore('Contact'),
    fromMore('Stuck'),
    tyres,
    ...energy,
    {
      verb: 'Stay out',
      presses: [button(/Stay out$/), button(/^Stay out 5 min more/)],
      says: 'Stay out 5 min more',
    },
    { ...lane, presses: [button(/^Lanes to come/), button('Lane 3')] },
  ],
  powerOff: [
    { verb: 'Power is on', presses: ['Power is on'], says: 'Power on' },
    { verb: 'Segment over', presses: ['Segment over'], says: 'Segment over' },
    setClock,
    fault,
    ...raceControl,
    note,
    change,
    standing,
    fromMore('De-slot'),
    fromMore('Red flag'),
    { ...fromMore('Car in'), presses: ['More', button(/^Car in/)] },
  ],
  between: [
    { verb: 'Green', presses: ['Green'], says: 'Green' },
    {
      verb: 'Measure',
      presses: ['Measure', button(/^Weight/)],
      digits: '212.5',
      says: 'Weight 212.5 g',
    },
    {
      verb: 'Work',
      presses: ['Work', { button: /Oil the bearings/ }],
      says: 'Oil the bearings done',
    },
    whoIsHere,
    note,
    standing,
    ...people,
    { ...lane, presses: [button(/^Lanes to come/), button('Lane 3')] },
    { verb: 'Fault', presses: ['More', button('Fault')], says: 'Fault' },
  ],
}
