/** What is measured on a car: the number is typed first, then one press says what it is of. */
import type { Body } from '@pitlamp/race'
import { milliText } from '../../parts/pad-number.ts'
import type { Tile } from '../../parts/shown.ts'
import { clockTime } from '../../parts/time.ts'
import type { Seen } from './people.ts'
import type { ToRecord } from './to-record.ts'

type Unit = Body<'measured.1'>['unit']

/** What teams put a gauge to most. Common practice, no source. */
const QUANTITIES = {
  Clearance: 'mm',
  Weight: 'g',
  'Tyre Ø': 'mm',
  'Motor temperature': '°C',
  Voltage: 'V',
} as const satisfies Record<string, Unit>
type Quantity = keyof typeof QUANTITIES

/** Each with its last reading; they sleep until something is typed. */
export function quantityTiles(
  { state, crew }: Seen,
  valueMilli: number | undefined,
): readonly Tile[] {
  return Object.entries(QUANTITIES).map(([quantity, unit]) => {
    const last = state.car.measurements
      .filter(({ body }) => body.quantity.toLowerCase() === quantity.toLowerCase())
      .at(-1)
    const hint = last
      ? `last ${milliText(last.body.valueMilli)} ${last.body.unit}, ${clockTime(last.at, crew.timeZone)}`
      : 'not measured yet'
    return { id: quantity, word: `${quantity}, ${unit}`, hint, off: valueMilli === undefined }
  })
}

export function measured(quantity: string, valueMilli: number): ToRecord {
  const unit = QUANTITIES[quantity as Quantity]
  const word = `${quantity} ${milliText(valueMilli)} ${unit}`
  return { kind: 'measured.1', body: { quantity, unit, valueMilli }, word }
}
