/** What holds without any rule. */
import type { AlwaysCheck } from '../case.ts'

export const ALWAYS: Readonly<Record<string, AlwaysCheck>> = {}
