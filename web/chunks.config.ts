/**
 * What several screens of a race load together, in a few files instead of fifty: fewer to ask for, and what lies in
 * one file compresses better. Each names only modules that the same screens have; whatever is not named is split as
 * the bundler sees fit. `npm run bench -- size` says what came of it.
 */

interface Chunk {
  readonly name: string
  readonly test: RegExp
}

/** Every screen that draws or counts from a timeline: a race's, and the planner's. */
const TIMELINE: Chunk = {
  name: 'timeline',
  test: within('packages/race/src', [
    'timeline/(timeline|spans|stops|segments|shortened)',
    'clocks/(stop-clock|visits)',
    'time/(held|plan-in-force|plan-spans|plan-within-length)',
  ]),
}

/** The wall, the driver, and whatever takes the wall's place. */
const STINT: Chunk = {
  name: 'stint',
  test: within('(packages/race|web)/src', [
    'clocks/(calls-now|served-stops|stint-clock|stops-done)',
    'obligations/stops-due',
    'time/standing-still',
    'parts/(Figure|Wick|doubt)',
  ]),
}

/** What falls due, for the wall's screens and for the line to the server, which sounds it. */
const DUE: Chunk = {
  name: 'due',
  test: within('packages/race/src', [
    'clocks/(after-the-flag|compulsory-repairs|during|energy|fault-clocks|hands-on-car)',
    'clocks/(lights|next-handover|pace|repair-limits|repair-opportunity)',
    'obligations/(calls|car|clock|duties|lights|protests)-due',
    'obligations/obligations',
    'standing/penalties',
    'time/darkness',
  ]),
}

/** The wall, and what takes its place and keeps its verbs: stop, between segments, after the flag. */
const WALL: Chunk = {
  name: 'wall',
  test: within('web/src', [
    'parts/(FlagMark|HeaderFacts|RaceHeader|Sheet|UndoBar|Verb|VerbBar)',
    'parts/(fault-press|hands|lamp|recorder|ribbon|said|verb)',
    'screens/wall/(about-penalty|calls|due|energy-shown|facts|faults|lamp-claims|lanes|people)',
    'screens/wall/(WallBar|WallHeader|WallSheet|presence|repairs|ribbon-of|stop-to-serve|verb-[a-z-]+|verbs|wall-(may|model|verbs))',
  ]),
}

/** None takes along what its modules import: most of that is on every page. */
export const CHUNKS = [TIMELINE, STINT, DUE, WALL].map((chunk) => ({
  ...chunk,
  includeDependenciesRecursively: false,
}))

function within(folder: string, modules: readonly string[]): RegExp {
  return new RegExp(`/${folder}/(${modules.join('|')})(\\.svelte)?(\\.ts)?$`)
}
