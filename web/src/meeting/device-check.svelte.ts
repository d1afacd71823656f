/** What somebody found who checked this device before a meeting: kept here, a meeting at a time. */
import { deviceCheckSchema, type DeviceCheck } from '@pitlamp/contract'
import { SvelteMap } from 'svelte/reactivity'

export type CheckAnswers = Omit<DeviceCheck, 'at'>

class DeviceChecks {
  /** What was found since the page was opened, by meeting. */
  readonly #found = new SvelteMap<string, DeviceCheck>()

  /** Undefined where nothing was checked for this meeting. */
  of(meeting: string): DeviceCheck | undefined {
    return this.#found.get(meeting) ?? kept(meeting)
  }

  note(meeting: string, answers: CheckAnswers, at: number): void {
    const check = { ...this.of(meeting), ...answers, at }
    this.#found.set(meeting, check)
    try {
      localStorage.setItem(keyOf(meeting), JSON.stringify(check))
    } catch {
      // Known until the page is left, then.
    }
  }
}

export const deviceChecks = new DeviceChecks()

function keyOf(meeting: string): string {
  return `pitlamp.check.${meeting}`
}

function kept(meeting: string): DeviceCheck | undefined {
  try {
    return deviceCheckSchema.safeParse(JSON.parse(localStorage.getItem(keyOf(meeting)) ?? '')).data
  } catch {
    return undefined
  }
}
