/** A captain fills in the planning screens: Harbour Lights, two segments of 20 minutes, one stop of 4 s in each. */
import type { Page } from 'playwright-core'

/** Begins on Rules and ends there, with nothing adopted yet. */
export async function layDown(page: Page): Promise<void> {
  await layTheRules(page)
  await to(page, 'Crew')
  for (const name of ['Ida Quill', 'Tom Wick', 'Bea Lorne']) {
    await page.getByLabel('Name of a person').fill(name)
    await page.getByRole('button', { name: 'Add a person' }).click()
  }
  await to(page, 'Car')
  await page.getByLabel('Name of the car').fill('Gull 3')
  await to(page, 'Rotation')
  await layThePlan(page)
  await to(page, 'Rules')
}

/** Another screen of the meeting, by the row of links. */
async function to(page: Page, title: string): Promise<void> {
  await page.getByRole('link', { name: title, exact: true }).click()
  await page.getByRole('heading', { name: title, level: 1 }).waitFor()
}

async function layTheRules(page: Page): Promise<void> {
  await page.getByLabel('Place').fill('The Sail Loft')
  await page.getByLabel('Time zone').fill('Europe/Dublin')
  await page.getByLabel('Segment 1: length').fill('0:20')
  await page.getByRole('button', { name: 'Add a break' }).click()
  await page.getByLabel('Break: length').fill('5 min')
  await page.getByRole('button', { name: 'Add a segment' }).click()
  await page.getByLabel('Mandatory stops: count').fill('1')
  await page.getByLabel('Minimum stop: minimum').fill('4 s')
  await page.getByLabel('Minimum stop: from').selectOption('the car stopped')
  await page.getByLabel('Minimum stop: to').selectOption('wheels turning')
  for (const clock of ['the segment’s clock', 'the minimum stop', 'driving time']) {
    await page.getByRole('button', { name: 'Add a rule' }).click()
    await page.getByRole('button', { name: /^Clocks/ }).click()
    await page.getByLabel('Clocks: clock').last().selectOption(clock)
    await page.getByLabel('Clocks: does').last().selectOption('holds')
  }
}

/** Ida drives and Bea marshals for five minutes; then Tom drives, and Ida relieves Bea. */
async function layThePlan(page: Page): Promise<void> {
  await page.getByLabel('GO comes after the minimum by').fill('1 s')
  const stint = page.getByRole('button', { name: 'Add a stint' })
  const marshal = page.getByRole('button', { name: 'Add a marshal' })
  const chosen = (what: string) => page.getByLabel(`Chosen: ${what}`)
  await stint.click()
  await chosen('to').fill('0:05')
  await stint.click()
  await stint.click()
  await marshal.click()
  await chosen('to').fill('0:05')
  await chosen('person').selectOption('Bea Lorne')
  await chosen('post').fill('2')
  await marshal.click()
  await chosen('person').selectOption('Ida Quill')
  await chosen('post').fill('2')
}
