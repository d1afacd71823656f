/**
 * A handover that can be done in order. At a post the relief comes before the marshal leaves; where the car runs on
 * and nothing has the old driver down first, so does the new driver. Then nobody can go from the controller to a post
 * while somebody comes from a post to the controller: each would wait for the other. And whoever goes from one named
 * post straight to another might close a ring of posts: that is not planned, which is stricter than need be.
 */
import type { Term } from '../linear/model.ts'
import type { Slot } from '../grid/slots.ts'
import type { Rotation } from './rotation.ts'

export function addOrder(rotation: Rotation): void {
  const { grid, places } = rotation
  const { rules } = grid.problem
  const posts = places.filter(({ duty }) => duty === 'post')
  if (posts.length === 0 || rules.some((rule) => rule.kind === 'relief' && !rule.before)) return
  const downFirst = rules.some((rule) => rule.kind === 'driverChange' && rule.order === 'downFirst')
  for (const slot of grid.slots) {
    if (slot.fromMs === 0 || slot.isPast) continue
    if (!downFirst && slot.begins === 'cut') noSwap(rotation, slot)
    if (posts.length > 1) noStraightMove(rotation, slot)
  }
}

/** `goes`: the driver goes to a post. `comes`: the next comes from one. */
function noSwap(rotation: Rotation, { index }: Slot): void {
  const { grid, model } = rotation
  const [goes, comes] = [model.part(), model.part()]
  for (const { id } of grid.drivers) {
    const left = [...rotation.endsOf(id, index), ...rotation.onDuty(id, 'post', index)]
    const came = [...rotation.startsOf(id, index), ...rotation.onDuty(id, 'post', index - 1)]
    model.row([...left, [goes, -1]], { atMost: 1 })
    model.row([...came, [comes, -1]], { atMost: 1 })
  }
  model.row(
    [
      [goes, 1],
      [comes, 1],
    ],
    { atMost: 1 },
  )
}

function noStraightMove(rotation: Rotation, { index }: Slot): void {
  const { grid, model, places } = rotation
  const posts = places.filter(({ duty }) => duty === 'post')
  for (const { id } of grid.problem.people) {
    for (const place of posts) {
      const here = rotation.heldAt(place, id, index)
      const others = posts.filter((one) => one !== place)
      const before = others.flatMap((one): readonly Term[] => rotation.heldAt(one, id, index - 1))
      if (here.length > 0 && before.length > 0) model.row([...here, ...before], { atMost: 1 })
    }
  }
}
