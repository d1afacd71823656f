/** Tones made here, speech and shaking where the device has them. Each screen can be muted, and says so. */

import type { Urgency } from '../parts/urgency.ts'

interface Tone {
  readonly hertz: number
  readonly fromMs: number
  readonly forMs: number
}
/** Each step has its own tones, so that it is known without looking. */
const TONES: Readonly<Record<Urgency, readonly Tone[]>> = {
  calm: [{ hertz: 587, fromMs: 0, forMs: 220 }],
  soon: [
    { hertz: 587, fromMs: 0, forMs: 180 },
    { hertz: 784, fromMs: 220, forMs: 260 },
  ],
  now: [
    { hertz: 784, fromMs: 0, forMs: 160 },
    { hertz: 988, fromMs: 200, forMs: 160 },
    { hertz: 1175, fromMs: 400, forMs: 420 },
  ],
}
const SHAKES_MS: Readonly<Record<Urgency, readonly number[]>> = {
  calm: [80],
  soon: [120, 80, 120],
  now: [250, 100, 250, 100, 400],
}
type Touched = { readonly userActivation?: { readonly hasBeenActive: boolean } }
const LOUDNESS = 0.35
const MUTED = 'pitlamp.muted'

class Sound {
  muted = $state(remembered() === 'yes')
  /** Browsers keep silent until the page was touched once. */
  waitsForTouch = $state(true)
  #context: AudioContext | undefined

  constructor() {
    if (typeof document === 'undefined') return
    document.addEventListener('pointerdown', () => void this.#wake(), { passive: true })
    document.addEventListener('keydown', () => void this.#wake())
  }

  mute(muted: boolean): void {
    this.muted = muted
    remember(muted ? 'yes' : 'no')
    if (muted && 'speechSynthesis' in globalThis) speechSynthesis.cancel()
  }

  sound(urgency: Urgency): void {
    this.shake(urgency)
    if (!this.muted) this.tone(urgency)
  }

  /** Muted or not: for a check. False where the browser keeps silent. */
  tone(urgency: Urgency): boolean {
    if (this.#context?.state !== 'running') return false
    for (const tone of TONES[urgency]) play(this.#context, tone)
    return true
  }

  /** False where the device cannot, or the page was not touched yet: browsers complain of it then. */
  shake(urgency: Urgency): boolean {
    const touched = (navigator as Touched).userActivation?.hasBeenActive ?? true
    if (!('vibrate' in navigator) || !touched) return false
    return navigator.vibrate([...SHAKES_MS[urgency]])
  }

  /** Resolves once the page may sound, after a touch; false where it may not. */
  async awake(): Promise<boolean> {
    await this.#wake()
    return !this.waitsForTouch
  }

  say(words: string): void {
    if (!this.muted) this.speak(words)
  }

  get canSpeak(): boolean {
    return 'speechSynthesis' in globalThis
  }

  get canShake(): boolean {
    return 'vibrate' in navigator
  }

  /** Muted or not: for a check. */
  speak(words: string): void {
    if (!this.canSpeak) return
    const spoken = new SpeechSynthesisUtterance(words)
    spoken.lang = 'en'
    speechSynthesis.speak(spoken)
  }

  async #wake(): Promise<void> {
    if (!('AudioContext' in globalThis)) return
    this.#context ??= new AudioContext()
    await this.#context.resume().catch(() => undefined)
    this.waitsForTouch = this.#context.state !== 'running'
  }
}

export const sound = new Sound()

function play(context: AudioContext, tone: Tone): void {
  const begins = context.currentTime + tone.fromMs / 1_000
  const ends = begins + tone.forMs / 1_000
  const oscillator = context.createOscillator()
  const gain = context.createGain()
  oscillator.type = 'triangle'
  oscillator.frequency.value = tone.hertz
  gain.gain.setValueAtTime(0, begins)
  gain.gain.linearRampToValueAtTime(LOUDNESS, begins + 0.012)
  gain.gain.setTargetAtTime(0, ends - 0.06, 0.02)
  oscillator.connect(gain).connect(context.destination)
  oscillator.start(begins)
  oscillator.stop(ends + 0.1)
}

function remembered(): string | null {
  try {
    return localStorage.getItem(MUTED)
  } catch {
    return null
  }
}

function remember(value: string): void {
  try {
    localStorage.setItem(MUTED, value)
  } catch {
    // Muted until the page is left, then.
  }
}
