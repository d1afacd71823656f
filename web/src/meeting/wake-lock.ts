import type { DeviceCheck } from '@pitlamp/contract'

/** Whether this screen can be kept lit, and where not, why. */
export async function tryAwake(): Promise<NonNullable<DeviceCheck['awake']>> {
  if (!('wakeLock' in navigator)) return isSecureContext ? 'unavailable' : 'plainHttp'
  const lock = await navigator.wakeLock.request('screen').catch(() => undefined)
  await lock?.release()
  return lock ? 'held' : 'refused'
}

/** Keeps the screen lit while a countdown is looked at, where the browser can (https and localhost). */
export function keepAwake(): () => void {
  if (!('wakeLock' in navigator)) return () => undefined
  let held: WakeLockSentinel | undefined
  let wanted = true
  const take = async () => {
    if (document.visibilityState === 'hidden') return
    const lock = await navigator.wakeLock.request('screen').catch(() => undefined)
    if (wanted) held = lock
    else await lock?.release()
  }
  const again = () => void take()
  document.addEventListener('visibilitychange', again)
  again()
  return () => {
    wanted = false
    document.removeEventListener('visibilitychange', again)
    void held?.release()
  }
}
