/** The captain's planning screens in the states that look different, each from a meeting of its own. */
import { planLinkSchema } from '@pitlamp/contract'
import { v7 as uuidV7 } from 'uuid'
import { everyRule } from './every-rule.ts'
import { enterMeeting, IDA, TOM } from './lantern-forty.ts'
import { showing, text, type View } from './view.ts'

/** The race has not begun, and one document is being changed. */
function drafted(screen: string, draft: { document: string; content: unknown }): View['open'] {
  return async (house) => {
    const captain = await house.captain()
    const meeting = await enterMeeting(captain)
    const path = `/api/meetings/${meeting.id}/documents/${draft.document}`
    await captain.call('PUT', path, { basedOn: 1, content: draft.content })
    return { page: await house.screen('captain', 'Laptop'), path: meeting.path(screen) }
  }
}

/** Made a moment ago: nothing is written down but its name. */
function unwritten(screen: string): View['open'] {
  return async (house) => {
    const captain = await house.captain()
    const id = uuidV7()
    await captain.call('POST', '/api/meetings', { id, name: 'Cellar sprint' })
    const length = { by: 'time', lengthMs: 3_600_000 }
    const programme = [{ id: 's1', kind: 'segment', length }]
    const rules = { name: 'Cellar sprint', timeZone: 'Europe/Dublin', programme, rules: [] }
    await captain.call('PUT', `/api/meetings/${id}/documents/rules`, { basedOn: 0, content: rules })
    return { page: await house.screen('captain', 'Laptop'), path: `/meetings/${id}/${screen}` }
  }
}

const ODD_CREW = {
  people: [
    { id: IDA, name: 'Ida Quill', duties: [], paceMs: 8_420, steadinessMs: 150 },
    {
      ...{ id: TOM, name: 'Maximiliane Freifrau von Hohenstein-Wachtersbach', duties: ['post'] },
      categories: ['novice', 'Nachwuchsfahrer'],
      there: [
        { id: 't1', fromAt: 1_774_700_000_000, toAt: 1_774_720_000_000 },
        { id: 't2', fromAt: 1_774_760_000_000 },
      ],
      wishes: 'Not the first stint, and home by midnight because of the last train to the coast.',
    },
  ],
}

const ASKING_CREW = {
  people: [
    {
      ...{ id: IDA, name: 'Ida Quill', duties: [], paceMs: 8_500 },
      restBlock: { atLeastMs: 21_600_000, fromAt: 1_774_700_000_000 },
      wishList: [
        { id: 'w1', kind: 'notAtEnd', which: 'last' },
        { id: 'w2', kind: 'beside', other: TOM },
      ],
    },
    {
      ...{ id: TOM, name: 'Tom Wick', duties: [], paceMs: 8_700 },
      wishList: [
        { id: 'w1', kind: 'noMoreThan', atMostMs: 1_200_000 },
        {
          ...{ id: 'w2', kind: 'notBetween' },
          ...{ fromAt: 1_774_700_000_000, toAt: 1_774_720_000_000 },
        },
        { id: 'w3', kind: 'after', other: IDA },
      ],
    },
  ],
}

export const PLANNING_VIEWS: readonly View[] = [
  {
    name: 'rules',
    lit: 'none',
    open: showing({ screen: 'rules', role: 'captain' }),
    ready: text('The meeting goes by what stands here'),
  },
  {
    name: 'rules, none yet',
    lit: 'none',
    open: unwritten('rules'),
    ready: text('No rule is written down yet'),
  },
  {
    name: 'rules, add a rule',
    lit: 'none',
    open: showing({ screen: 'rules', role: 'captain' }),
    ready: async (page) => {
      await page.getByRole('button', { name: 'Add a rule' }).click()
      await page.getByRole('button', { name: /^Minimum stop/ }).waitFor()
    },
  },
  {
    name: 'rules, published sets',
    lit: 'none',
    open: showing({ screen: 'rules', role: 'captain' }),
    ready: async (page) => {
      await page.getByRole('button', { name: 'Start from a published set' }).click()
      await page.getByRole('button', { name: /BSCRA/ }).waitFor()
    },
  },
  {
    name: 'rules, many',
    lit: 'one',
    open: drafted('rules', { document: 'rules', content: everyRule() }),
    ready: (page) => page.getByRole('region', { name: 'What cannot hold together' }).waitFor(),
  },
  {
    name: 'crew',
    lit: 'none',
    open: drafted('crew', { document: 'crew', content: ODD_CREW }),
    ready: text('by hand, no evidence yet'),
  },
  {
    name: 'crew, what people ask for',
    lit: 'none',
    open: drafted('crew', { document: 'crew', content: ASKING_CREW }),
    ready: (page) => page.getByLabel('Tom Wick: to drive no more than').waitFor(),
  },
  {
    name: 'crew, nobody yet',
    lit: 'none',
    open: unwritten('crew'),
    ready: text('Nobody is in the crew yet'),
  },
  {
    name: 'rotation',
    lit: 'one',
    open: showing({ screen: 'rotation', role: 'captain' }),
    ready: text('In segment 2 there are no mandatory stops'),
  },
  {
    name: 'rotation, a span chosen while the race runs',
    lit: 'one',
    open: showing({ screen: 'rotation', role: 'captain', minutes: 15 }),
    ready: async (page) => {
      await page.getByRole('button', { name: /^Ida Quill drives in Segment 2/ }).click()
      await page.getByText('in all').waitFor()
    },
  },
  {
    name: 'rotation, no plan possible',
    lit: 'one',
    open: showing({ screen: 'rotation', role: 'captain' }),
    ready: async (page) => {
      await page.getByRole('button', { name: 'Work it out' }).click()
      await page.getByText('No plan keeps all of this.').waitFor({ timeout: 60_000 })
      await page.getByRole('button', { name: 'Work it out' }).waitFor()
    },
  },
  {
    name: 'rotation, worked out in the race',
    lit: 'none',
    open: showing({ screen: 'rotation', role: 'captain', minutes: 15 }),
    ready: async (page) => {
      await page.getByLabel('Stops', { exact: true }).selectOption('are chosen, every 10 min')
      await page.getByRole('button', { name: 'Work it out again' }).click()
      await page.getByRole('group', { name: 'Most laps' }).waitFor({ timeout: 60_000 })
      await page.getByRole('button', { name: 'Leave it' }).waitFor()
    },
  },
  {
    name: 'rotation, what each rule costs',
    lit: 'none',
    open: drafted('rotation', { document: 'crew', content: ASKING_CREW }),
    ready: async (page) => {
      const duty = 'Somebody is always at the wall'
      await page.getByRole('button', { name: duty }).click()
      await page.getByLabel('Stops', { exact: true }).selectOption('are chosen, every 10 min')
      await page.getByRole('button', { name: 'Work it out' }).click()
      await page.getByRole('button', { name: 'What each rule costs' }).click({ timeout: 60_000 })
      await page.getByText('Tom Wick wishes to drive no more').waitFor({ timeout: 60_000 })
      await page.getByRole('button', { name: 'Leave it' }).waitFor({ timeout: 60_000 })
    },
  },
  {
    name: 'rotation, nothing yet',
    lit: 'one',
    open: unwritten('rotation'),
    ready: text('Nobody is in the crew yet'),
  },
  {
    name: 'plan, by its link',
    lit: 'none',
    open: async (house) => {
      const captain = await house.captain()
      const meeting = await enterMeeting(captain)
      const { links } = planLinkSchema.parse(
        await captain.call('POST', `/api/meetings/${meeting.id}/plan-link`),
      )
      const { pathname, hash } = new URL(links[0] ?? '')
      return { page: await house.blank(), path: `${pathname}${hash}` }
    },
    ready: text('The plan the meeting goes by'),
  },
  {
    name: 'car',
    lit: 'none',
    open: showing({ screen: 'car', role: 'captain' }),
    ready: text('The meeting goes by what stands here'),
  },
]
