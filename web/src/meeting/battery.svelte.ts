/** Charger and battery, where the browser tells: Chromium over HTTPS and on localhost. */
import type { DeviceReport } from '@pitlamp/contract'

type BatteryShown = NonNullable<DeviceReport['battery']>

interface BatteryLike extends EventTarget {
  readonly charging: boolean
  /** 0 to 1. */
  readonly level: number
}
type Asks = { readonly getBattery?: () => Promise<BatteryLike> }

/** Finer than anybody needs, and every change is told to the whole team. */
const STEP_PERCENT = 5

class Battery {
  /** Undefined until the device has said, and for good where it does not. */
  shown = $state.raw<BatteryShown>()
  #asked = false

  watch(): void {
    if (this.#asked || typeof navigator === 'undefined') return
    this.#asked = true
    const asked = (navigator as Asks).getBattery?.()
    asked?.then(
      (battery) => this.#follow(battery),
      () => undefined,
    )
  }

  #follow(battery: BatteryLike): void {
    const look = () => (this.shown = batteryShown(battery))
    battery.addEventListener('chargingchange', look)
    battery.addEventListener('levelchange', look)
    look()
  }
}

export const battery = new Battery()

export function batteryShown({
  charging,
  level,
}: Pick<BatteryLike, 'charging' | 'level'>): BatteryShown {
  const percent = Math.round((level * 100) / STEP_PERCENT) * STEP_PERCENT
  return { charging, percent: Math.min(100, Math.max(0, percent)) }
}
