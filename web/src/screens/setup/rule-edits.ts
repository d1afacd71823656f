/** Reading and changing one rule within regulations that are being written. Changes are made in place. */
import {
  NOT_KNOWN_YET,
  rulesOf,
  ruleValue,
  type Clock,
  type ClockPolicy,
  type Regulations,
  type Rule,
  type RuleKind,
  type RuleOf,
  type RuleValue,
} from '@pitlamp/race'
import { freshId } from './defaults.ts'

type NotKnown = typeof NOT_KNOWN_YET
export type WorkPhase = RuleValue<'workAllowed'>['during']

export function stopsRule(rules: Regulations): RuleValue<'mandatoryStops'> {
  return ruleValue(rules.rules, 'mandatoryStops') ?? { count: NOT_KNOWN_YET, per: 'segment' }
}

export function minimumRule(rules: Regulations): RuleValue<'stopMinimum'> {
  const open = { minimumMs: NOT_KNOWN_YET, from: NOT_KNOWN_YET, to: NOT_KNOWN_YET } as const
  return ruleValue(rules.rules, 'stopMinimum') ?? open
}

export type Window = Exclude<RuleValue<'stopWindows'>['windows'], NotKnown>[number]
export function windowsOf(rules: Regulations): readonly Window[] {
  const windows = ruleValue(rules.rules, 'stopWindows')?.windows
  return windows === undefined || windows === NOT_KNOWN_YET ? [] : windows
}

export function clockDoes(rules: Regulations, clock: Clock): ClockPolicy | NotKnown {
  return clockRule(rules, clock)?.value.does ?? NOT_KNOWN_YET
}

export function workIsAllowed(rules: Regulations, during: WorkPhase): boolean | NotKnown {
  return workRule(rules, during)?.value.allowed ?? NOT_KNOWN_YET
}

export function clockRule(rules: Regulations, clock: Clock): RuleOf<'clockPolicy'> | undefined {
  const policies = rulesOf(rules.rules, 'clockPolicy')
  return policies.find(({ value }) => value.clock === clock && value.under === 'trackCall')
}

export function workRule(rules: Regulations, during: WorkPhase): RuleOf<'workAllowed'> | undefined {
  return rulesOf(rules.rules, 'workAllowed').find(({ value }) => value.during === during)
}

/** Sets the one rule of this kind, or adds it. */
export function setRule<K extends RuleKind>(
  rules: Regulations,
  kind: K,
  value: RuleValue<K>,
): void {
  const rule = rules.rules.find((rule) => rule.kind === kind)
  if (rule) rule.value = value
  else addRule(rules, kind, value)
}

export function setClock(rules: Regulations, clock: Clock, does: ClockPolicy | NotKnown): void {
  const rule = clockRule(rules, clock)
  if (rule) rule.value.does = does
  else addRule(rules, 'clockPolicy', { clock, under: 'trackCall', does })
}

export function setWork(rules: Regulations, during: WorkPhase, allowed: boolean | NotKnown): void {
  const rule = workRule(rules, during)
  if (rule) rule.value.allowed = allowed
  else addRule(rules, 'workAllowed', { during, allowed })
}

function addRule<K extends RuleKind>(rules: Regulations, kind: K, value: RuleValue<K>): void {
  rules.rules.push({ id: freshId('r', rules.rules), kind, value } as Rule)
}
