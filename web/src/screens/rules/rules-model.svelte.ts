/** What the Rules screen does with the draft of the rules: rules by group, added, taken out, replaced by a set. */
import {
  briefingQuestions,
  CHECKS,
  GROUPS,
  RULE_KINDS,
  SENTENCES,
  type Group,
  type Regulations,
  type Rule,
  type RuleKind,
} from '@pitlamp/race'
import type { PlanningModel } from '../../planning/planning-model.svelte.ts'
import type { ShownLine } from '../../planning/gone.ts'
import { TakenOut } from '../../planning/taken-out.svelte.ts'
import { midnightOf } from './midnight.ts'
import { addRule, categoriesIn } from './rule-edits.ts'

export interface StartingPoint {
  readonly id: string
  readonly called: string
  readonly source: string
  readonly regulations: Regulations
}
export interface RuleGroup {
  readonly group: Group
  readonly title: string
  readonly lines: readonly ShownLine<Rule>[]
}

const UNDO_WITHIN_REAL_MS = 10_000
const LOOK_AGAIN_REAL_MS = 50
const NOT_SAVED_FIRST = 'What stands here could not be saved first, so nothing was replaced.'

export class RulesModel {
  readonly planning: PlanningModel
  readonly taken: TakenOut<Rule>
  /** The set just taken, and what it replaced. */
  replaced = $state.raw<{ readonly called: string; readonly before: string }>()
  problem = $state<string>()

  constructor(planning: PlanningModel) {
    this.planning = planning
    this.taken = new TakenOut(() => planning.rules.content.rules)
  }

  readonly groups: readonly RuleGroup[] = $derived.by(() => {
    const titles = Object.entries(GROUPS) as [Group, string][]
    return titles
      .map(([group, title]) => ({
        ...{ group, title },
        lines: this.taken.shown.filter(({ line }) => SENTENCES[line.kind].group === group),
      }))
      .filter(({ lines }) => lines.length > 0)
  })
  readonly questions = $derived.by(() => briefingQuestions(this.planning.rules.content))
  /** Categories of the crew, then those that only the rules name. */
  readonly categories = $derived.by(() => {
    const crew = this.planning.crew.content.people.flatMap(({ categories }) => categories ?? [])
    return unique([...crew, ...categoriesIn(this.planning.rules.content)])
  })
  readonly leftOut = $derived.by(() =>
    RULE_KINDS.map(({ kind }) => kind)
      .filter((kind) => !('notChecked' in CHECKS[kind]) && !this.#says(kind))
      .map((kind) => SENTENCES[kind].called),
  )
  readonly notChecked = $derived.by(() =>
    RULE_KINDS.map(({ kind }) => kind).flatMap((kind) => {
      const check = CHECKS[kind]
      return 'notChecked' in check && this.#says(kind)
        ? [{ called: SENTENCES[kind].called, why: check.notChecked }]
        : []
    }),
  )

  /** @returns the id of the new rule */
  add(kind: RuleKind): string {
    return addRule(this.planning.rules.content, kind, this.taken.ids)
  }

  /**
   * Programme, rules and note of the set; the meeting keeps its name, place and time zone, and its programme and
   * note where the set has none.
   */
  async startFrom({ called, regulations }: StartingPoint): Promise<void> {
    const draft = this.planning.rules
    this.problem = undefined
    while (draft.stands === 'saving') {
      await new Promise((done) => setTimeout(done, LOOK_AGAIN_REAL_MS))
    }
    if (!(await draft.save())) {
      this.problem = NOT_SAVED_FIRST
      return
    }
    const replaced = { called, before: draft.text }
    const { note = draft.content.note } = regulations
    this.#replace({ ...structuredClone(regulations), note })
    this.replaced = replaced
    setTimeout(() => {
      if (this.replaced === replaced) this.replaced = undefined
    }, UNDO_WITHIN_REAL_MS)
  }

  /** Called from an effect: writes the midnight down that hours of the clock are counted from, or leaves it. */
  keepMidnight(): void {
    const { content, stands } = this.planning.rules
    const midnightAt = midnightOf(content)
    if (stands !== 'loading' && midnightAt !== undefined && content.midnightAt !== midnightAt)
      content.midnightAt = midnightAt
  }

  bringBack(): void {
    if (!this.replaced) return
    this.#replace(JSON.parse(this.replaced.before) as Regulations)
    this.replaced = undefined
  }

  #replace({ programme, rules, note }: Regulations): void {
    const { content } = this.planning.rules
    const kept = programme.length > 0 ? programme : content.programme
    this.planning.rules.content = { ...content, programme: kept, rules, note }
  }

  #says(kind: RuleKind): boolean {
    return this.planning.rules.content.rules.some((rule) => rule.kind === kind)
  }
}

function unique(names: readonly string[]): readonly string[] {
  return names.filter((name, index) => names.indexOf(name) === index)
}
