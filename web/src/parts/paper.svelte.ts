/** The paper everything is drawn on: hall (dark) or daylight. Follows the system until somebody presses. */

export type Paper = 'hall' | 'daylight'
const KEY = 'pitlamp.paper'

class PaperChoice {
  paper = $state<Paper>('hall')

  constructor() {
    const system = matchMedia('(prefers-color-scheme: dark)')
    const follow = () => (this.paper = remembered() ?? (system.matches ? 'hall' : 'daylight'))
    follow()
    system.addEventListener('change', follow)
    const chosen = remembered()
    // Only what somebody chose is written on the root; the rest is the style sheet's.
    if (chosen) document.documentElement.dataset.paper = chosen
  }

  turn(): void {
    this.paper = this.paper === 'hall' ? 'daylight' : 'hall'
    try {
      localStorage.setItem(KEY, this.paper)
    } catch {
      // Then it holds until the page is left.
    }
    document.documentElement.dataset.paper = this.paper
  }
}

function remembered(): Paper | undefined {
  try {
    const kept = localStorage.getItem(KEY)
    return kept === 'hall' || kept === 'daylight' ? kept : undefined
  } catch {
    return undefined
  }
}

export const choice = new PaperChoice()
