/** Faults from noted to mended or left, with every go at their repair. */
import type { EntryOf } from '../../entry/read.ts'
import type { Draft, FaultDraft, RepairDraft } from '../draft.ts'
import { alreadySo, outOfPlace, type Handler } from './handler.ts'

export const faultNoted: Handler<'faultNoted.1'> = (draft, entry, at) => {
  const { fault, causedBy } = entry.body
  const noted: FaultDraft = { entry: entry.id, fault, notedAt: at, repairs: [] }
  if (causedBy !== undefined) noted.causedBy = causedBy
  draft.car.faults.set(entry.id, noted)
}

/** A fault that was left may be taken up again; one that is mended is noted anew if it returns. */
export const repairStarted: Handler<'repairStarted.1'> = (draft, entry, at) => {
  const fault = namedBy(draft, entry)
  if (!fault) return
  if (fault.ended?.how === 'mended') {
    outOfPlace(
      draft,
      [fault.ended.entry, entry.id],
      `${fault.fault}: repair began after it was mended.`,
    )
  } else if (openRepair(fault)) {
    alreadySo(draft, [fault.entry, entry.id], `${fault.fault}: already being repaired.`)
  } else {
    delete fault.ended
    fault.repairs.push({ fromAt: at })
  }
}

export const repairPaused: Handler<'repairPaused.1'> = (draft, entry, at) => {
  const fault = namedBy(draft, entry)
  if (!fault) return
  const repair = openRepair(fault)
  if (repair) repair.toAt = at
  else outOfPlace(draft, [fault.entry, entry.id], `${fault.fault}: nobody was repairing it.`)
}

/** Finished without having been started: a repair of unknown length, simply ended. */
export const repairFinished: Handler<'repairFinished.1'> = (draft, entry, at) => {
  const fault = namedBy(draft, entry)
  if (!fault) return
  if (fault.ended?.how !== 'mended') end(fault, 'mended', { entry: entry.id, at })
  else alreadySo(draft, [fault.ended.entry, entry.id], `${fault.fault}: already mended.`)
}

export const faultLeft: Handler<'faultLeft.1'> = (draft, entry, at) => {
  const fault = namedBy(draft, entry)
  if (!fault) return
  if (!fault.ended) end(fault, 'left', { entry: entry.id, at })
  else alreadySo(draft, [fault.ended.entry, entry.id], `${fault.fault}: already mended or left.`)
}

/** Work that is done when the car goes out mends the fault it was for. */
export function mendedInStop(draft: Draft, entry: EntryOf<'stopOut.1'>, at: number): void {
  for (const { fault: named, done } of entry.body.work ?? []) {
    if (named === undefined || !done) continue
    const fault = find(draft, named)
    if (!fault) outOfPlace(draft, [entry.id], 'Work was done on a fault that is not in the log.')
    else if (fault.ended?.how !== 'mended') end(fault, 'mended', { entry: entry.id, at })
  }
}

function end(
  fault: FaultDraft,
  how: 'mended' | 'left',
  { entry, at }: { readonly entry: string; readonly at: number },
): void {
  const repair = openRepair(fault)
  if (repair) repair.toAt = at
  fault.ended = { how, at, entry }
}

type OfFault = EntryOf<'repairStarted.1' | 'repairPaused.1' | 'repairFinished.1' | 'faultLeft.1'>

function namedBy(draft: Draft, entry: OfFault): FaultDraft | undefined {
  const fault = find(draft, entry.body.fault)
  if (!fault) outOfPlace(draft, [entry.id], 'A repair is of a fault that is not in the log.')
  return fault
}

function find(draft: Draft, named: string): FaultDraft | undefined {
  return draft.car.faults.get(draft.holders.get(named) ?? named)
}

function openRepair(fault: FaultDraft): RepairDraft | undefined {
  const last = fault.repairs.at(-1)
  return last && last.toAt === undefined ? last : undefined
}
