/** The stop with work in it, the screens between two segments and after the flag. */
import { adoption, LANTERN_FORTY, TOM } from './lantern-forty.ts'
import { verb } from './screens.ts'
import { showing, text, type Happens, type View } from './view.ts'
import { adoptWhole } from './whole-race.ts'

/** Repairs the rules want, work that can hurt, a job done and one that was put on the list; two alerts at once. */
const atWork: Happens = async (meeting) => {
  const { press } = meeting
  await adoptWhole(meeting)
  await press('faultNoted.1', { fault: 'Braid' }, 200)
  await press('faultNoted.1', { fault: 'Rear wing' }, 20)
  await press('stopIn.1', { moment: 'stopped', planned: 't1' }, 5)
  await press('workTicked.1', { work: 'Wipe tyres', done: false }, 4)
  await press('workTicked.1', { work: 'Solder a wire', done: false }, 3)
  await press('workTicked.1', { work: 'Tighten screws', done: true }, 1)
}

/** Leaving a stop early costs two laps a second. */
const earlyCosts: Happens = async ({ press }) => {
  const early = {
    ...{ id: 'early', kind: 'penalty', clause: '5.6' },
    value: {
      ...{ for: 'Stop left early', is: 'laps', amount: 2, per: 'secondShort', scope: 'race' },
    },
  } as const
  const rules = { ...LANTERN_FORTY.rules, rules: [...LANTERN_FORTY.rules.rules, early] }
  await press('adopted.1', { ...adoption('rules', rules), version: 2 })
}

/** Three seconds early. */
const leftEarly: Happens = async (meeting) => {
  const { press } = meeting
  await earlyCosts(meeting)
  await press('stopIn.1', { moment: 'stopped', planned: 't1' }, 62)
  await press('stopOut.1', { moment: 'leaving' }, 20)
}

/** While the power is off, so that what is missing of the minimum stands still. */
const mayNotLeave: Happens = async (meeting) => {
  const { press } = meeting
  await earlyCosts(meeting)
  await press('stopIn.1', { moment: 'stopped', planned: 't1' }, 62)
  await press('trackCall.1', {}, 40)
}

const between: Happens = async (meeting) => {
  const { press } = meeting
  await adoptWhole(meeting)
  const car = {
    ...LANTERN_FORTY.car,
    betweenWork: [
      ...['Brush the braid', 'Wipe tyres with lighter fluid', 'Oil the bearings'],
      'Controller plugged in, power tested',
    ],
  }
  await press('adopted.1', { ...adoption('car', car), version: 3 })
  await press('segmentEnd.1', { segment: 's1' }, 360)
  const clearance = { quantity: 'Clearance', unit: 'mm', valueMilli: 1_050 } as const
  const motor = { quantity: 'Motor temperature', unit: '°C', valueMilli: 63_500 } as const
  await press('measured.1', clearance, 300)
  await press('measured.1', motor, 280)
  await press('workTicked.1', { work: 'Brush the braid', done: true }, 200)
  await press('handover.1', { moves: [{ person: TOM, duty: 'controller' }] }, 400)
}

/** Both segments over, the car seen and weighed, a provisional result that may be protested. */
const after: Happens = async (meeting) => {
  const { press } = meeting
  await adoptWhole(meeting)
  const plan = {
    ...LANTERN_FORTY.plan,
    captain: { ...LANTERN_FORTY.plan.captain, protestMs: 1_800_000 },
  }
  await press('adopted.1', { ...adoption('plan', plan), version: 2 })
  await press('segmentEnd.1', { segment: 's1' }, 3_000)
  await press('green.1', { segment: 's2' }, 2_900)
  await press('segmentEnd.1', { segment: 's2' }, 500)
  await press('scrutineering.1', { when: 'final', verdict: 'passedWithAdvice' }, 400)
  await press('measured.1', { quantity: 'Weight', unit: 'g', valueMilli: 92_400 }, 300)
  const lines = [
    { place: 1, entrant: 'Tallow Works', laps: 412, section: 35 },
    { place: 2, entrant: 'Lantern Row', laps: 405, section: 20, ours: true },
  ]
  await press('classification.1', { standing: 'provisional', scope: 'whole', lines }, 240)
}
const flagOnly: Happens = async ({ press }) => {
  await press('segmentEnd.1', { segment: 's1' }, 3_000)
  await press('green.1', { segment: 's2' }, 2_900)
  await press('segmentEnd.1', { segment: 's2' }, 500)
}

export const STOP_VIEWS: readonly View[] = [
  {
    name: 'stop, at work',
    lit: 'one',
    open: showing({ screen: 'stop', minutes: 13, happens: atWork }),
    ready: text('Tighten screws'),
  },
  {
    name: 'stop, more work',
    lit: 'one',
    open: showing({ screen: 'stop', minutes: 13, happens: atWork }),
    ready: async (page) => {
      await verb(page, 'More work').click()
      await page.getByRole('dialog', { name: 'More work in this stop' }).waitFor()
    },
  },
  {
    name: 'stop, other order',
    lit: 'one',
    open: showing({ screen: 'stop', minutes: 13, happens: atWork }),
    ready: async (page) => {
      await page.getByRole('button', { name: 'Other order' }).click()
      await page.getByRole('button', { name: 'Later: Rear wing' }).waitFor()
    },
  },
  {
    name: 'stop, leaving early costs',
    lit: 'one',
    open: showing({ screen: 'stop', minutes: 14, happens: mayNotLeave }),
    ready: text('leaving now costs'),
  },
  {
    name: 'stop, left early',
    lit: 'none',
    open: showing({ screen: 'stop', minutes: 14, happens: leftEarly }),
    ready: text('Left 3 s early'),
  },
  {
    name: 'between',
    lit: 'one',
    open: showing({ screen: 'between', minutes: 46, happens: between }),
    ready: text('What to do, in this order'),
  },
  {
    name: 'between, while it runs',
    lit: 'none',
    open: showing({ screen: 'between', minutes: 3 }),
    ready: text('No break just now'),
  },
  {
    name: 'finish, protest time',
    lit: 'none',
    open: showing({ screen: 'finish', minutes: 92, happens: after }),
    ready: text('Protest time'),
  },
  {
    name: 'finish, scrutineering',
    lit: 'none',
    open: showing({ screen: 'finish', minutes: 92, happens: flagOnly }),
    ready: text('Passed with advice'),
  },
]
