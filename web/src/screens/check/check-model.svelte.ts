/** One line for each thing a device must be able to do, what is known of it, and what to press. */
import { battery } from '../../meeting/battery.svelte.ts'
import { deviceChecks, type CheckAnswers } from '../../meeting/device-check.svelte.ts'
import { deviceReport } from '../../meeting/device-report.ts'
import type { ClockShown, MeetingPort } from '../../meeting/port.ts'
import { sound } from '../../meeting/sound.svelte.ts'
import { tryAwake } from '../../meeting/wake-lock.ts'
import { AWAKE_WORDS, powerWords, readiness } from '../../parts/readiness.ts'
import { clockWords } from '../../parts/standing.ts'

type Part = 'sound' | 'speech' | 'vibration' | 'awake' | 'charger' | 'clock'
interface Way {
  readonly word: string
  readonly press: () => void
}
interface Line {
  readonly part: Part
  readonly title: string
  readonly words: string
  readonly ways: readonly Way[]
}

const NOT_TRIED = 'not tried yet'
const HEARD = { heard: 'heard', notHeard: 'not heard', unavailable: 'this device does not speak' }
const FELT = { felt: 'felt', notFelt: 'not felt', unavailable: 'this device does not shake' }
const SILENT = 'The browser keeps silent. Touch the page once more and try again.'

/** Beyond this a bound says nothing: the clock was never heard of. */
const NO_BOUND_MS = 3_600_000

function clockAndBound(clock: ClockShown): string {
  const { standing, boundMs } = clock
  const words = clockWords(clock)
  if (standing === 'roughly' || boundMs >= NO_BOUND_MS) return words
  return `${words}, ± ${boundMs < 1_000 ? `${boundMs} ms` : `${(boundMs / 1_000).toFixed(1)} s`}`
}

export class CheckModel {
  readonly #of: () => MeetingPort
  /** Tried just now: whoever holds the device says what came of it. */
  asked = $state<Part>()
  problem = $state<string>()

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
    battery.watch()
  }

  readonly #check = $derived.by(() => deviceChecks.of(this.#of().id))
  readonly readiness = $derived.by(() => {
    const { id: meeting, person, clock } = this.#of()
    return readiness(deviceReport({ meeting, person, clock }))
  })
  readonly lines = $derived.by((): readonly Line[] => [
    this.#sound(),
    this.#speech(),
    this.#vibration(),
    this.#awake(),
    this.#charger(),
    { part: 'clock', title: 'Clock', words: clockAndBound(this.#of().clock), ways: [] },
  ])

  #sound(): Line {
    const { sound: answer } = this.#check ?? {}
    const muted = this.#of().muted ? '; this screen is muted' : ''
    return {
      part: 'sound',
      title: 'Sound',
      words: (answer ? HEARD[answer] : NOT_TRIED) + muted,
      ways: this.#ways({
        part: 'sound',
        word: 'Play a tone',
        tried: () => void this.#play(),
        answers: [
          ['Heard it', { sound: 'heard' }],
          ['Not heard', { sound: 'notHeard' }],
        ],
      }),
    }
  }

  #speech(): Line {
    const { speech } = this.#check ?? {}
    return {
      part: 'speech',
      title: 'Speech',
      words: speech ? HEARD[speech] : NOT_TRIED,
      ways: this.#ways({
        part: 'speech',
        word: 'Say something',
        tried: () => this.#speak(),
        answers: [
          ['Heard it', { speech: 'heard' }],
          ['Not heard', { speech: 'notHeard' }],
        ],
      }),
    }
  }

  #vibration(): Line {
    const { vibration } = this.#check ?? {}
    return {
      part: 'vibration',
      title: 'Shaking',
      words: vibration ? FELT[vibration] : NOT_TRIED,
      ways: this.#ways({
        part: 'vibration',
        word: 'Shake it',
        tried: () => this.#shake(),
        answers: [
          ['Felt it', { vibration: 'felt' }],
          ['Not felt', { vibration: 'notFelt' }],
        ],
      }),
    }
  }

  #awake(): Line {
    const { awake } = this.#check ?? {}
    const words = awake ? AWAKE_WORDS[awake] : NOT_TRIED
    const ways = [{ word: 'Try to keep it lit', press: () => void this.#tryAwake() }]
    return { part: 'awake', title: 'Screen', words, ways }
  }

  /** Asked only where the device cannot say. */
  #charger(): Line {
    const { id: meeting, person, clock } = this.#of()
    const words = powerWords(deviceReport({ meeting, person, clock }))
    const answer = (word: string, answers: CheckAnswers) => ({
      word,
      press: () => this.#note(answers),
    })
    const ways = battery.shown
      ? []
      : [
          answer('It is on a charger', { charger: 'plugged' }),
          answer('It is not', { charger: 'notPlugged' }),
        ]
    return { part: 'charger', title: 'Charger', words: words ?? 'not known yet', ways }
  }

  #ways(of: {
    readonly part: Part
    readonly word: string
    readonly tried: () => void
    readonly answers: readonly (readonly [word: string, answers: CheckAnswers])[]
  }): readonly Way[] {
    const again = { word: of.word, press: of.tried }
    if (this.asked !== of.part) return [again]
    const said = of.answers.map(([word, answers]) => ({ word, press: () => this.#note(answers) }))
    return [...said, again]
  }

  async #play(): Promise<void> {
    const mayPlay = await sound.awake()
    this.problem = mayPlay && sound.tone('now') ? undefined : SILENT
    if (this.problem === undefined) this.asked = 'sound'
  }

  #speak(): void {
    if (!sound.canSpeak) this.#note({ speech: 'unavailable' })
    else {
      sound.speak('This is how Pitlamp speaks')
      this.asked = 'speech'
    }
  }

  #shake(): void {
    if (!sound.canShake) this.#note({ vibration: 'unavailable' })
    else if (sound.shake('now')) this.asked = 'vibration'
    else this.#note({ vibration: 'notFelt' })
  }

  async #tryAwake(): Promise<void> {
    this.#note({ awake: await tryAwake() })
  }

  #note(answers: CheckAnswers): void {
    const { id, now } = this.#of()
    this.asked = undefined
    deviceChecks.note(id, answers, now)
  }
}
