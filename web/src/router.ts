/** The address on show. Links stay plain `<a href>`; a click on one of ours is followed here. */
import { routeOf, type Route } from './routes.ts'

class Router {
  #told: (route: Route) => void = () => undefined

  get route(): Route {
    return routeOf(location.pathname)
  }

  /** Tells of the address on show now and of every later one. */
  follow(told: (route: Route) => void): void {
    this.#told = told
    addEventListener('popstate', () => told(this.route))
    document.addEventListener('click', (event) => this.#clicked(event))
    told(this.route)
  }

  go(path: string, how: 'push' | 'replace' = 'push'): void {
    if (how === 'push') history.pushState(null, '', path)
    else history.replaceState(null, '', path)
    scrollTo(0, 0)
    this.#told(this.route)
  }

  #clicked(event: MouseEvent): void {
    if (event.defaultPrevented || event.button !== 0) return
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return
    const link = event.target instanceof Element ? event.target.closest('a') : null
    if (!link || link.target !== '' || link.hasAttribute('download')) return
    const url = new URL(link.href)
    if (url.origin !== location.origin || routeOf(url.pathname).screen === 'unknown') return
    event.preventDefault()
    this.go(url.pathname + url.search + url.hash)
  }
}

export const router = new Router()
