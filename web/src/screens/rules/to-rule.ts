import { tick } from 'svelte'

/** Brings a rule into sight and the focus to it: to its row, or to the first value one can change. */
export async function toRule(id: string, where: 'row' | 'value' = 'row'): Promise<void> {
  await tick()
  const row = document.getElementById(`rule-${id}`)
  const value = row?.querySelector<HTMLElement>('.sentence :is(input, select, button)')
  row?.scrollIntoView({ block: 'center' })
  const target = where === 'value' ? (value ?? row) : row
  target?.focus({ preventScroll: true })
}
