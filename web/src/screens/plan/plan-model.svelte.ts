/** A plan opened by a link. */
import type { SharedPlan } from '@pitlamp/contract'
import { openPlan, planCalendar } from '../../api/plan-link.ts'

export class PlanModel {
  readonly #code: string
  plan = $state.raw<SharedPlan>()
  problem = $state<string>()
  person = $state('')

  constructor(hash: string) {
    this.#code = decodeURIComponent(hash.replace(/^#/, ''))
    void this.open()
  }

  readonly lines = $derived.by(() => {
    const spans = this.plan?.spans ?? []
    return spans.filter(
      ({ person, duty }) => duty !== 'offDuty' && (this.person === '' || person === this.person),
    )
  })

  async open(): Promise<void> {
    const reply = await openPlan(this.#code)
    this.problem = 'failed' in reply ? reply.failed.sentence : undefined
    if ('ok' in reply) this.plan = reply.ok
  }

  nameOf(person: string): string {
    return this.plan?.people.find(({ id }) => id === person)?.name ?? 'Somebody'
  }

  segmentName(segment: string): string {
    const index = this.plan?.segments.findIndex(({ id }) => id === segment) ?? -1
    return this.plan?.segments[index]?.name ?? `Segment ${index + 1}`
  }

  /** Hands the file to the browser, under a name of its own. */
  async calendar(): Promise<void> {
    const file = await planCalendar(this.#code, this.person === '' ? undefined : this.person)
    if (!file) {
      this.problem = 'The calendar file cannot be had now. Try again when the server is back.'
      return
    }
    const link = document.createElement('a')
    link.href = URL.createObjectURL(file)
    link.download = `${this.plan?.meeting.name ?? 'plan'}.ics`
    link.click()
    URL.revokeObjectURL(link.href)
  }
}
