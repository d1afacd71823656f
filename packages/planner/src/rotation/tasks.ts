/** What is done at stops: one task each, as a plan names it. */
import type { StopColumn } from './mandatory.ts'
import type { Rotation } from './rotation.ts'

/** Whether a task is done at a stop; undefined where something else is given to be done, or it is over. */
export function taskColumn(rotation: Rotation, task: string, stop: StopColumn): number | undefined {
  const given = stop.slot.stop?.task
  const name = sameTask(task)
  if (given !== undefined) return sameTask(given) === name ? stop.column : undefined
  if (stop.slot.isPast) return undefined
  const tasks = rotation.tasks.get(stop.slot.index) ?? new Map<string, number>()
  rotation.tasks.set(stop.slot.index, tasks)
  const made = tasks.get(task)
  if (made !== undefined) return made
  const column = rotation.model.column()
  tasks.set(task, column)
  return column
}

/** One task a stop, and none where the car does not stop. Once all rules have said what they ask for. */
export function oneTaskEach({ model, tasks, stops }: Rotation): void {
  for (const [slot, columns] of tasks) {
    const stop = stops.get(slot)
    if (stop === undefined) continue
    const all = [...columns.values()].map((column) => [column, 1] as const)
    model.row([...all, [stop, -1]], { atMost: 0 })
  }
}

function sameTask(task: string): string {
  return task.trim().toLowerCase()
}
