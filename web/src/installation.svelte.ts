/** The program kept on this device, and a newer build waiting beside it. Nothing is reloaded without a press. */

const LOOK_EVERY_MS = 3_600_000

class Installation {
  /** A newer build is here and waits to be loaded. */
  newerWaits = $state(false)
  #registration: ServiceWorkerRegistration | undefined

  /** Only https and localhost have workers; elsewhere a reload needs the server. */
  register(): void {
    if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return
    void navigator.serviceWorker.register('/service-worker.js').then(
      (registration) => this.#watch(registration),
      () => undefined,
    )
  }

  /** The server speaks another version than this screen: perhaps a newer build can be had from it. */
  lookForNewer(): void {
    void this.#registration?.update().catch(() => undefined)
  }

  load(): void {
    const waiting = this.#registration?.waiting
    if (!waiting) {
      location.reload()
      return
    }
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload())
    waiting.postMessage('takeOver')
  }

  #watch(registration: ServiceWorkerRegistration): void {
    this.#registration = registration
    const look = () => {
      this.newerWaits = registration.waiting !== null && navigator.serviceWorker.controller !== null
    }
    look()
    registration.addEventListener('updatefound', () =>
      registration.installing?.addEventListener('statechange', look),
    )
    setInterval(() => this.lookForNewer(), LOOK_EVERY_MS)
  }
}

export const installation = new Installation()
