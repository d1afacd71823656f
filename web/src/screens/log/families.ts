/** Entries by what they are about, for the filter of the log. */

export const FAMILIES = ['raceControl', 'people', 'car', 'record'] as const
export type Family = (typeof FAMILIES)[number]

export const FAMILY_WORDS: Readonly<Record<Family, string>> = {
  raceControl: 'Race control',
  people: 'People',
  car: 'Car',
  record: 'Record',
}

const KINDS: Readonly<Record<Exclude<Family, 'raceControl'>, readonly string[]>> = {
  people: [
    'handover',
    'inControl',
    'dutyTaken',
    'dutyLeft',
    'availability',
    'call',
    'answer',
    'stayOut',
  ],
  car: [
    'stopIn',
    'stopOut',
    'incident',
    'faultNoted',
    'repairStarted',
    'repairPaused',
    'repairFinished',
    'faultLeft',
    'partFitted',
    'partRemoved',
    'carExchanged',
    'measured',
    'inspected',
    'energy',
    'workTicked',
  ],
  record: ['adopted', 'advised', 'note', 'photograph', 'action', 'correction'],
}

/** A kind this build does not know is of race control, as in the table of who may what. */
export function familyOf(kind: string): Family {
  const name = kind.split('.')[0] ?? kind
  return (
    (['people', 'car', 'record'] as const).find((family) => KINDS[family].includes(name)) ??
    'raceControl'
  )
}
