/**
 * Keeps the whole program on the device, so that a reload works with the server gone. A newer build waits
 * until nobody looks at this one, or until somebody presses "Load it": a running wall is never reloaded
 * by itself, and never gets a file of another build. Exists over https and on localhost only.
 */
interface Build {
  readonly version: string
  readonly addresses: readonly string[]
}
/** The few things of a worker's world that are used here; the library of types for it clashes with the DOM's. */
interface Lasting extends Event {
  waitUntil(work: Promise<unknown>): void
}
interface Asked extends Lasting {
  readonly request: Request
  respondWith(answer: Promise<Response>): void
}
interface Worker {
  readonly clients: { claim(): Promise<void> }
  skipWaiting(): Promise<void>
  addEventListener(event: 'install' | 'activate', listener: (event: Lasting) => void): void
  addEventListener(event: 'fetch', listener: (event: Asked) => void): void
  addEventListener(event: 'message', listener: (event: MessageEvent<unknown>) => void): void
}
declare const __BUILD__: Build

const worker = self as unknown as Worker
const { version, addresses } = __BUILD__
const CACHE = `pitlamp-${version}`

worker.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(CACHE)
      .then((cache) => cache.addAll(addresses.map((at) => new Request(at, { cache: 'reload' })))),
  )
})

worker.addEventListener('activate', (event) => {
  event.waitUntil(forgetOlder().then(() => worker.clients.claim()))
})

worker.addEventListener('message', (event) => {
  if (event.data === 'takeOver') void worker.skipWaiting()
})

worker.addEventListener('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== location.origin) return
  if (request.mode === 'navigate' && !pathname.startsWith('/api/'))
    event.respondWith(kept('/', request))
  else if (addresses.includes(pathname)) event.respondWith(kept(pathname, request))
})

async function kept(address: string, request: Request): Promise<Response> {
  const cache = await caches.open(CACHE)
  return (await cache.match(address)) ?? fetch(request)
}

async function forgetOlder(): Promise<void> {
  const names = await caches.keys()
  const older = names.filter((name) => name.startsWith('pitlamp-') && name !== CACHE)
  await Promise.all(older.map((name) => caches.delete(name)))
}
