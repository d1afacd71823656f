/** Parts of a rule that are lists: read as such, counted where they are too long to stand in a sentence. */
import { choiceWords, NOT_KNOWN_YET, partsOf, valueInWords, type Rule } from '@pitlamp/race'
import { partName, partOf, setPart } from './rule-edits.ts'
import type { Window } from './window-edits.ts'

export type SegmentName = (id: string) => string

const MOST_IN_SENTENCE: Readonly<Record<string, number>> = { windows: 1, segments: 3 }

export function chosenSegments(rule: Rule, part: string): readonly string[] {
  return linesOf(rule, part) as readonly string[]
}

export function chosenWindows(rule: Rule, part: string): readonly Window[] {
  return linesOf(rule, part) as readonly Window[]
}

/** A list with nothing in it is not known yet, where that can be. */
export function setLines(rule: Rule, part: string, lines: readonly unknown[]): void {
  const isOpen = lines.length === 0 && partsOf(rule.kind)[part]?.asked === true
  setPart(rule, part, isOpen ? NOT_KNOWN_YET : lines)
}

/** Names of parts that stand below the sentence. */
export function longParts(rule: Rule): readonly string[] {
  return Object.entries(partsOf(rule.kind))
    .filter(([name, { is }]) => linesOf(rule, name).length > (MOST_IN_SENTENCE[is] ?? Infinity))
    .map(([name]) => name)
}

/** As it stands in the sentence. */
export function listText(rule: Rule, part: string, segment: SegmentName): string {
  return longParts(rule).includes(part)
    ? `${linesOf(rule, part).length} ${partName(part)}`
    : wholeText(rule, part, segment)
}

export function wholeText(rule: Rule, part: string, segment: SegmentName): string {
  const shape = partsOf(rule.kind)[part]
  const wording = { words: choiceWords(rule, part), names: { segment } }
  return shape ? valueInWords(shape, partOf(rule, part), wording) : ''
}

function linesOf(rule: Rule, part: string): readonly unknown[] {
  const lines = partOf(rule, part)
  return Array.isArray(lines) ? lines : []
}
