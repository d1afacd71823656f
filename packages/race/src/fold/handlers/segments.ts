/** Segments begin, change and end. */
import type { Draft, RunDraft } from '../draft.ts'
import { assumeDuties } from '../duties.ts'
import { segmentName } from '../names.ts'
import { beginRun, endRun, lengthOf, resume } from '../running.ts'
import { alreadySo, outOfPlace, said, type Handler } from './handler.ts'

export const green: Handler<'green.1'> = (draft, entry, at) => {
  const { segment } = entry.body
  const { running, interrupted } = draft.raceControl
  const name = segmentName(draft, segment)
  if (running?.segment === segment) {
    if (interrupted) resume(draft, entry, at)
    else alreadySo(draft, [running.entry, entry.id], `${name} was already running.`)
    return
  }
  if (running) {
    const other = segmentName(draft, running.segment)
    outOfPlace(draft, [running.entry, entry.id], `${name} began while ${other} was still running.`)
    endRun(draft, entry, at)
  }
  const before = lastRunOf(draft, segment)
  if (before && !isToBeRunAgain(draft, before)) {
    outOfPlace(draft, [before.entry, entry.id], `${name} was over and was not to be run again.`)
  }
  if (!lengthOf(draft, segment, at)) {
    outOfPlace(
      draft,
      [entry.id],
      'This segment is not in the programme: how long it lasts is not known.',
    )
  }
  beginRun(draft, entry, at)
  assumeDuties(draft, entry, at)
}

export const segmentEnd: Handler<'segmentEnd.1'> = (draft, entry, at) => {
  const { segment } = entry.body
  const { running } = draft.raceControl
  if (running?.segment === segment) {
    endRun(draft, entry, at)
    return
  }
  const name = segmentName(draft, segment)
  const run = lastRunOf(draft, segment)
  if (run) alreadySo(draft, [run.endEntry ?? run.entry, entry.id], `${name} was already over.`)
  else outOfPlace(draft, [entry.id], `${name} ended without having begun.`)
}

export const segmentChanged: Handler<'segmentChanged.1'> = (draft, entry, at) => {
  const { segment, change } = entry.body
  draft.raceControl.segmentChanges.push(said(entry, at))
  if (!lengthOf(draft, segment, at)) {
    outOfPlace(draft, [entry.id], 'A segment was changed that is not in the programme.')
  }
  const run = lastRunOf(draft, segment)
  if (!run) return
  if (change.what === 'length') {
    if (run.endAt === undefined) run.length = { by: 'time', lengthMs: change.lengthMs }
    return
  }
  if (draft.raceControl.running === run) endRun(draft, entry, at)
  if (change.what === 'abandoned') run.abandoned = true
}

function lastRunOf(draft: Draft, segment: string): RunDraft | undefined {
  const { runs } = draft.raceControl
  for (let i = runs.length - 1; i >= 0; i -= 1) if (runs[i]?.segment === segment) return runs[i]
  return undefined
}

function isToBeRunAgain(draft: Draft, run: RunDraft): boolean {
  return draft.raceControl.segmentChanges.some(
    ({ at, body }) =>
      body.segment === run.segment && body.change.what === 'runAgain' && at >= run.greenAt,
  )
}
