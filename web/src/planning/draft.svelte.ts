/**
 * One document while it is being written. It saves itself a moment after the last change; where somebody
 * else saved it meanwhile both versions are shown and nothing is overwritten.
 */
import { documentSchemas, type DocumentContent, type DocumentName } from '@pitlamp/race'
import type { Failure } from '../api/ask.ts'
import { askDraft, savedMeanwhile, saveDraft } from '../api/drafts.ts'
import { keepDraft } from '../meeting/kept-drafts.ts'

const SAVE_AFTER_REAL_MS = 700
const TRY_AGAIN_REAL_MS = 5_000

export type Stands = 'loading' | 'saved' | 'saving' | 'typed' | 'notSaved' | 'stale'

interface Version<D extends DocumentName> {
  readonly version: number
  readonly content: DocumentContent<D>
}

/** A draft of any document, as far as choosing between two versions goes. */
export interface StaleShown {
  readonly document: DocumentName
  readonly text: string
  readonly theirs: { readonly content: unknown } | undefined
  takeTheirs(): void
  keepMine(): Promise<void>
}

export class Draft<D extends DocumentName> {
  readonly document: D
  content = $state() as DocumentContent<D>
  version = $state(0)
  theirs = $state.raw<Version<D>>()
  problem = $state<string>()
  /** As it is saved and adopted. */
  readonly text = $derived.by(() => textOf(this.document, this.content))
  #loaded = $state(false)
  #saving = $state(false)
  #savedText = $state('')
  #timer: ReturnType<typeof setTimeout> | undefined
  readonly #meeting: string

  readonly stands = $derived.by((): Stands => {
    if (!this.#loaded) return 'loading'
    if (this.theirs) return 'stale'
    if (this.#saving) return 'saving'
    if (this.problem !== undefined) return 'notSaved'
    return this.text === this.#savedText ? 'saved' : 'typed'
  })

  /** `first` is what is shown until the server's version is here, and where there is none. */
  constructor(of: { meeting: string; document: D; first: Version<D> }) {
    this.#meeting = of.meeting
    this.document = of.document
    this.content = of.first.content
    this.version = of.first.version
  }

  async load(): Promise<void> {
    const before = this.text
    const reply = await askDraft(this.#meeting, this.document)
    // What was typed meanwhile stands; if the server's is another, saving will say so.
    if (this.#loaded && this.text !== before) return
    if ('failed' in reply) {
      this.problem = reply.failed.sentence
    } else {
      keepDraft(this.#meeting, reply.ok)
      this.version = reply.ok.version
      const content = read(this.document, reply.ok.content)
      if (content) this.content = content
    }
    this.#savedText = this.text
    this.#loaded = true
  }

  /** Called whenever the text has changed: touches the timer only. */
  saveSoon(text: string): void {
    clearTimeout(this.#timer)
    if (!this.#loaded || text === this.#savedText || this.theirs) return
    this.#timer = setTimeout(() => void this.save(), SAVE_AFTER_REAL_MS)
  }

  /** Whether the server has exactly what is on show. */
  async save(): Promise<boolean> {
    clearTimeout(this.#timer)
    if (this.theirs) return false
    if (this.text === this.#savedText && this.version > 0) return true
    if (this.#saving) return false
    this.#saving = true
    const { text } = this
    const content = JSON.parse(text) as unknown
    const reply = await saveDraft(this.#meeting, this.document, {
      basedOn: this.version,
      content,
    })
    this.#saving = false
    if ('failed' in reply) return this.#notSaved(reply.failed)
    keepDraft(this.#meeting, reply.ok)
    this.problem = undefined
    this.version = reply.ok.version
    this.#savedText = text
    this.saveSoon(this.text)
    return this.text === text
  }

  /** Somebody else's version instead of this one. */
  takeTheirs(): void {
    if (!this.theirs) return
    this.content = this.theirs.content
    this.version = this.theirs.version
    this.#savedText = this.text
    this.theirs = undefined
  }

  /** This version after all, as the next one after theirs. */
  async keepMine(): Promise<void> {
    if (!this.theirs) return
    this.version = this.theirs.version
    this.theirs = undefined
    await this.save()
  }

  #notSaved(failed: Failure): false {
    const theirs = savedMeanwhile(failed)
    const content = theirs && read(this.document, theirs.content)
    if (theirs && content) this.theirs = { version: theirs.version, content }
    else this.problem = failed.sentence
    if (failed.refusal === 'noServer') {
      this.#timer = setTimeout(() => void this.save(), TRY_AGAIN_REAL_MS)
    }
    return false
  }
}

/** One order of keys, so that the same content is the same text wherever it came from. */
export function textOf(document: DocumentName, content: unknown): string {
  return JSON.stringify(read(document, content) ?? content)
}

function read<D extends DocumentName>(
  document: D,
  content: unknown,
): DocumentContent<D> | undefined {
  return documentSchemas[document].safeParse(content).data as DocumentContent<D> | undefined
}
