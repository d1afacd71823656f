/**
 * The paper everything is drawn on: daylight, hall (dark), or night (dimmer, for a hall without lights). Follows the
 * system until somebody presses.
 */

const PAPERS = ['daylight', 'hall', 'night'] as const
export type Paper = (typeof PAPERS)[number]
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

  /** What the next press turns to: from hall to night, and round. */
  get next(): Paper {
    return PAPERS[(PAPERS.indexOf(this.paper) + 1) % PAPERS.length] ?? 'hall'
  }

  turn(): void {
    this.paper = this.next
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
    return PAPERS.find((paper) => paper === kept)
  } catch {
    return undefined
  }
}

export const choice = new PaperChoice()
