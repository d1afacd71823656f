/**
 * Every verb of the pit wall in every phase, and the shortest way to it: what is pressed, the digits typed on a pad
 * before the last press, and what the wall says was recorded.
 */

export interface Way {
  /** As the bar or More calls it, or what stands on the wall. */
  readonly verb: string
  /** A verb of the bar by its word, anything else by the name of its button. */
  readonly presses: readonly (string | { readonly button: string | RegExp })[]
  readonly digits?: string
  /** As its undo calls it. */
  readonly says: string
}

const button = (name: string | RegExp) => ({ button: name })
const bea = button(/^Bea Lorne/)
const power = button(/Race control said$/)
const clock = button(/Set clock$/)
const theCar = button(/^The car:/)
const readStanding = button(/^Standing/)

/** On the bar, or opened by whatever else opens it. */
const note = (by: Way['presses'][number] = 'Note'): Way => ({
  ...{ verb: 'Note', presses: [by, button('Power sags')], says: 'Note' },
})
const fault = (by: Way['presses'][number] = 'Fault'): Way => ({
  ...{ verb: 'Fault', presses: [by, button('Braid')], says: 'Fault' },
})
const setClock = (by: Way['presses'][number] = 'Set clock'): Way => ({
  ...{ verb: 'Set clock', presses: [by, button('It shows this now')] },
  ...{ digits: '3400', says: 'Clock' },
})
const change = (by: Way['presses'][number] = button(/^Change/)): Way => ({
  ...{ verb: 'Change', presses: [by, button('Record the change')], says: 'Change' },
})
const lane = (by: Way['presses'][number] = button(/^Lanes to come/)): Way => ({
  ...{ verb: 'Lane', presses: [by, button('Lane 3')], says: 'Lane 3' },
})
const measure = (by: Way['presses'][number] = theCar): Way => ({
  ...{ verb: 'Measure', presses: [by, button(/^Clearance/)] },
  ...{ digits: '1.05', says: 'Clearance 1.05 mm' },
})
const work = (by: Way['presses'][number] = theCar): Way => ({
  ...{ verb: 'Work', presses: [by, button(/Oil the bearings/)] },
  ...{ says: 'Oil the bearings done' },
})
const standing = (by: Way['presses'][number] = readStanding): Way => ({
  ...{ verb: 'Standing', presses: [by, button('It shows this now')] },
  ...{ digits: '3›120', says: 'Standing' },
})

/** Pressed where they stand in the column at the left. */
const people: readonly Way[] = [
  { verb: 'Who is here', presses: [bea, button(/^late for ?20 min$/)], says: 'Late' },
  { verb: 'Who is here', presses: [bea, button('Away')], says: 'Away' },
  { verb: 'Who is here', presses: [bea, button('Here')], says: 'Here' },
  { verb: 'Call somebody', presses: [bea, button('Go and rest')], says: 'Call' },
  {
    verb: 'Call somebody',
    presses: [bea, button(/^Wake-up call in ?30 min$/)],
    says: 'Wake-up call in 30 min',
  },
  { verb: 'Take over a duty', presses: [bea, button('Bench')], says: 'Duty' },
]
const saidBy = (by: Way['presses'][number]): readonly Way[] =>
  (
    [
      { tile: 'Warning', says: 'Penalty, Warning' },
      { tile: '−2 laps', digits: '2', says: 'Penalty, 2 laps' },
      { tile: '+2 laps', digits: '2', says: 'Laps corrected' },
      { tile: '10 min', says: '10 min later' },
      { tile: 'Hands off the car', says: 'Ruling' },
    ] as const
  ).map(({ tile, ...way }) => ({
    ...{ verb: 'Race control said', presses: [by, button(tile)], ...way },
  }))
const energy: readonly Way[] = [
  { verb: 'Energy', presses: [button('Filled')], says: 'Filled' },
  {
    verb: 'Energy',
    presses: [button('Read'), button(/^40 laps left/)],
    digits: '40',
    says: 'Energy',
  },
]
const fromMore = (word: string, says = word): Way => ({
  verb: word,
  presses: ['More', button(word)],
  says,
})
const incidents = ['Wrong lane', 'Contact', 'Stuck'].map((word) => fromMore(word))
const tyres: Way = {
  verb: 'Fit a part',
  presses: ['More', button(/^Tyre set/)],
  says: 'Tyre set fitted',
}
const faultBehindMore: Way = { verb: 'Fault', presses: ['More', button('Fault')], says: 'Fault' }

export const WAYS = {
  before: [
    { verb: 'Green', presses: ['Green'], says: 'Green' },
    lane('Lane'),
    { verb: 'Who is here', presses: ['Who is here', button('unwell')], says: 'Unwell' },
    fault(),
    note(),
    change(),
    measure(),
    work(),
    ...saidBy(power),
    ...people,
    tyres,
  ],
  green: [
    { verb: 'Car in', presses: ['Car in'], says: 'Car in' },
    change('Change'),
    change(),
    { verb: 'De-slot', presses: ['De-slot'], says: 'De-slot' },
    fault(),
    { verb: 'Power is off', presses: ['Power is off'], says: 'Power off' },
    ...saidBy('Race control said'),
    standing(),
    ...people,
    setClock(clock),
    note(button('Note')),
    measure(),
    fromMore('Segment over'),
    fromMore('Red flag'),
    ...incidents,
    tyres,
    ...energy,
    {
      verb: 'Stay out',
      presses: [button(/Stay out$/), button(/^Stay out 5 min more/)],
      says: 'Stay out 5 min more',
    },
    lane(),
  ],
  powerOff: [
    { verb: 'Power is on', presses: ['Power is on'], says: 'Power on' },
    { verb: 'Segment over', presses: ['Segment over'], says: 'Segment over' },
    setClock(),
    fault(),
    ...saidBy('Race control said'),
    note(),
    change(),
    standing(),
    measure(),
    ...people,
    ...energy,
    fromMore('De-slot'),
    fromMore('Red flag'),
    ...incidents,
    { verb: 'Car in', presses: ['More', button(/^Car in/)], says: 'Car in' },
  ],
  between: [
    { verb: 'Green', presses: ['Green'], says: 'Green' },
    measure('Measure'),
    work('Work'),
    { verb: 'Who is here', presses: ['Who is here', button('unwell')], says: 'Unwell' },
    note(),
    { verb: 'Change', presses: [button(/^Change/), button(/^Tom Wick/)], says: 'Change' },
    ...saidBy(power),
    standing(),
    ...people,
    ...energy,
    lane(),
    fault(button('Fault')),
    faultBehindMore,
  ],
  stop: [
    {
      verb: 'More work',
      presses: ['More work', button(/^Wipe tyres/)],
      says: 'Wipe tyres to do',
    },
    { verb: 'Job done', presses: ['Job done'], says: 'Mended' },
    { verb: 'Leave this job', presses: ['Leave this job'], says: 'Repair paused' },
    { verb: 'Power is off', presses: ['Power is off'], says: 'Power off' },
    { verb: 'Car out', presses: ['Car out'], says: 'Car out' },
    faultBehindMore,
    ...saidBy(button('Race control said')),
    { verb: 'Call somebody', presses: [button('Call somebody'), button('Stay out')], says: 'Call' },
    note(button('Note')),
    setClock(button('Set clock')),
    { verb: 'Energy', presses: [button('Energy'), button('Filled')], says: 'Filled' },
    measure(button('Measure')),
    standing(button('Standing')),
    { verb: 'Who is here', presses: [button('Who is here'), button('unwell')], says: 'Unwell' },
    fromMore('Segment over'),
    fromMore('Red flag'),
    ...incidents,
    tyres,
  ],
  finished: [
    fault(),
    note(),
    ...saidBy(power).filter(({ says }) => says !== '10 min later'),
    standing(),
    measure(),
    ...people,
  ],
} as const satisfies Readonly<Record<string, readonly Way[]>>
