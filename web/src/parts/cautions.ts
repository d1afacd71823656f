/**
 * Work that can hurt, told by the words in a job's name, and the usual caution for it in one breath. Common practice,
 * no source: the maker's sheet, the venue's rules and qualified help come first, and every screen that shows a
 * caution says so.
 */

type Hurts =
  'solder' | 'glue' | 'solvent' | 'rotaryTool' | 'liveTrack' | 'buttonCell' | 'lithiumCell'

export interface Caution {
  readonly of: Hurts
  readonly words: string
}

export const CAUTION_DEFERS =
  'The maker’s sheet, the venue’s rules and qualified help come before this screen.'

interface Known extends Caution {
  /** Lower case; whole words, or several beside each other. */
  readonly keys: readonly string[]
}

const KNOWN: readonly Known[] = [
  {
    of: 'solder',
    keys: ['solder', 'soldering', 'soldered', 'iron', 'hot iron'],
    words:
      'Iron in its stand, eyes covered, fumes drawn off, motor disconnected; wash hands before you eat.',
  },
  {
    of: 'glue',
    keys: ['glue', 'glued', 'gluing', 'superglue', 'epoxy', 'cyano', 'activator', 'adhesive'],
    words: 'Eyes covered, fresh air, no skin in it; let it set before anybody touches the car.',
  },
  {
    of: 'solvent',
    keys: ['lighter fluid', 'solvent', 'thinner', 'acetone', 'degrease', 'degreaser', 'petrol'],
    words:
      'Nothing hot or sparking near, fresh air, cap back on, the rag into a closed tin; dry before power.',
  },
  {
    of: 'rotaryTool',
    keys: ['rotary', 'drill', 'grind', 'grinder', 'grinding', 'cut-off', 'truing', 'true'],
    words: 'Eyes covered, hair and sleeves tied back, the part clamped, nobody in the line of it.',
  },
  {
    of: 'liveTrack',
    keys: ['live track', 'on the track', 'track braid', 'track power', 'rail'],
    words: 'No metal across the rails, no ring or bracelet; ask for power off first.',
  },
  {
    of: 'buttonCell',
    keys: ['button cell', 'button cells', 'coin cell', 'coin cells'],
    words: 'Count them in and out, out of children’s reach: swallowed, it is an emergency.',
  },
  {
    of: 'lithiumCell',
    keys: ['lithium', 'lipo', 'li-ion', 'battery pack'],
    words: 'Never charge or fit a swollen or dented one; charge it watched, on what cannot burn.',
  },
]

/** In a fixed order, each once; none for a job that names nothing of the kind. */
export function cautionsFor(job: string): readonly Caution[] {
  return KNOWN.filter(({ keys }) => keys.some((key) => hasWords(job, key))).map(
    ({ of, words }) => ({ of, words }),
  )
}

/** Hot, glued and solvent work: not offered inside a running countdown unless the captain allowed it. */
const NOT_IN_A_HURRY: ReadonlySet<Hurts> = new Set<Hurts>(['solder', 'glue', 'solvent'])

export function isHotWork(job: string): boolean {
  return cautionsFor(job).some(({ of }) => NOT_IN_A_HURRY.has(of))
}

function hasWords(job: string, key: string): boolean {
  const spaced = (text: string) => ` ${text.toLowerCase().replace(/[^\p{L}\p{N}-]+/gu, ' ')} `
  return spaced(job).includes(spaced(key))
}
