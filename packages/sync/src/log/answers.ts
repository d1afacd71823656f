/** What became of the batch on its way. Only the answer to that very batch counts; any other is late. */
import type { Appended, AppendResult, Problem } from '@pitlamp/contract'
import type { Effect, Step } from './events.ts'
import { afterTrouble, halved, recovered, setAside, setAsideEach } from './care.ts'
import { isOfAnotherHistory } from './confirmed.ts'
import { cutBack } from './cut-back.ts'
import { MEANING } from './refusals.ts'
import { pauseBeforeSending } from './pauses.ts'
import { cursor, type Pending, type SyncState, type WhySetAside } from './state.ts'

/** How long the entries themselves may stay out after the server said they are saved. */
const MISSING_SAVED_AFTER_MS = 1_000

export function appended(state: SyncState, batch: number, answer: Appended): Step {
  if (state.sending?.batch !== batch) return { state, effects: [] }
  const results = resultsById(state.sending.ids, answer.results)
  if ([...results.values()].some((one) => isNumbered(one) && isOfAnotherHistory(state, one))) {
    return cutBack({ ...state, sending: undefined }, 0)
  }
  const saved = noteSaved(state, results)
  const refused = setAsideEach(saved.state, refusalsIn(results))
  const effects = [...saved.effects, ...refused.effects]
  if (refused.effects.length > 0 || saved.effects.length > 0) {
    const care = recovered(state.care)
    return { state: { ...refused.state, sending: undefined, care }, effects }
  }
  return withoutProgress(state, results)
}

export function appendFailed(state: SyncState, batch: number, problem?: Problem): Step {
  if (state.sending?.batch !== batch) return { state, effects: [] }
  const { ids } = state.sending
  const idle = { ...state, sending: undefined }
  const meaning = problem === undefined ? 'failure' : MEANING[problem.refusal]
  switch (meaning) {
    case 'stop':
      return { state: { ...idle, stopped: problem?.refusal }, effects: [] }
    case 'later':
      return pauseBeforeSending(idle, 'later')
    case 'failure':
      return thenPause(afterTrouble(state, 'failure'))
    case 'batchRefused':
      return problem ? setAside(idle, ids, problem.refusal) : { state: idle, effects: [] }
    case 'smaller':
    case 'entryRefused':
      if (ids.length > 1) return { state: { ...idle, care: halved(ids.length) }, effects: [] }
      return setAside(
        idle,
        ids,
        meaning === 'smaller' ? 'tooLarge' : (problem?.refusal ?? 'malformed'),
      )
  }
}

type Numbered = Extract<AppendResult, { seq: number }>

/** Results come in the order of the entries; one that names another entry answers nothing. */
function resultsById(
  ids: readonly string[],
  results: readonly AppendResult[],
): Map<string, AppendResult> {
  const byId = new Map<string, AppendResult>()
  ids.forEach((id, index) => {
    const result = results[index]
    if (result && (result.id === id || result.id === null)) byId.set(id, result)
  })
  return byId
}

function isNumbered(result: AppendResult): result is Numbered {
  return result.outcome !== 'refused'
}

/** Saved is shown at once; the log itself grows only by what arrives in order. */
function noteSaved(state: SyncState, results: ReadonlyMap<string, AppendResult>): Step {
  const noted: Pending[] = []
  const pending = state.pending.map((waiting): Pending => {
    const result = results.get(waiting.entry.id)
    if (!result || !isNumbered(result)) return waiting
    const { seq, recordedAt, role } = result
    const saved = { entry: waiting.entry, recorded: { ...waiting.entry, seq, recordedAt, role } }
    noted.push(saved)
    return saved
  })
  if (noted.length === 0) return { state, effects: [] }
  const effects: Effect[] = [{ do: 'keep', pending: noted }]
  if (noted.some(({ recorded }) => recorded && recorded.seq > cursor(state))) {
    effects.push({ do: 'wait', forMs: MISSING_SAVED_AFTER_MS, before: 'missingSaved' })
  }
  return { state: { ...state, pending }, effects }
}

function refusalsIn(results: ReadonlyMap<string, AppendResult>) {
  const reasons = new Map<string, { why: WhySetAside; detail?: string }>()
  for (const [id, result] of results) {
    if (isNumbered(result)) continue
    const meaning = MEANING[result.refusal]
    if (meaning !== 'entryRefused' && meaning !== 'batchRefused') continue
    const detail = result.detail === undefined ? {} : { detail: result.detail }
    reasons.set(id, { why: result.refusal, ...detail })
  }
  return reasons
}

/** Not one entry got anywhere. A server that cannot save just now is nobody's failure. */
function withoutProgress(state: SyncState, results: ReadonlyMap<string, AppendResult>): Step {
  const idle = { ...state, sending: undefined }
  const refusals = [...results.values()].flatMap((one) => (isNumbered(one) ? [] : [one.refusal]))
  const stop = refusals.find((refusal) => MEANING[refusal] === 'stop')
  if (stop !== undefined) return { state: { ...idle, stopped: stop }, effects: [] }
  if (refusals.some((refusal) => MEANING[refusal] === 'later'))
    return pauseBeforeSending(idle, 'later')
  return thenPause(afterTrouble(state, 'failure'))
}

function thenPause({ state, effects }: Step): Step {
  const paused = pauseBeforeSending(state, 'soon')
  return { state: paused.state, effects: [...effects, ...paused.effects] }
}
