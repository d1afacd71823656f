/** A sentence in pieces that a line may break between: words, then a value with what clings to it. */
import type { PartToken, WordsToken } from '@pitlamp/race'

export interface Phrase {
  readonly words: string
  readonly part?: string
  /** Punctuation that never begins a line. */
  readonly tail: string
}

export function phrasesOf(tokens: readonly (WordsToken | PartToken)[]): readonly Phrase[] {
  const phrases: Phrase[] = []
  let words = ''
  for (const [index, token] of tokens.entries()) {
    if (token.is === 'words') {
      words = index === 0 ? token.words : token.words.slice(clinging(token.words).length)
    } else {
      const next = tokens[index + 1]
      const tail = next?.is === 'words' ? clinging(next.words) : ''
      phrases.push({ words, part: token.part, tail })
      words = ''
    }
  }
  return words === '' ? phrases : [...phrases, { words, tail: '' }]
}

function clinging(words: string): string {
  return /^[^\s\w]+/.exec(words)?.[0] ?? ''
}
