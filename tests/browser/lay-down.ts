/** A captain fills in Set-up: Harbour Lights, two segments of 20 minutes, one stop of 4 s in each. */
import type { Page } from 'playwright-core'

export async function layDown(page: Page): Promise<void> {
  await page.getByLabel('Place').fill('The Sail Loft')
  await page.getByLabel('Time zone').fill('Europe/Dublin')
  await page.getByLabel('Segment 1: length').fill('0:20')
  await page.getByRole('button', { name: 'Add a break' }).click()
  await page.getByLabel('Break: length').fill('5 min')
  await page.getByRole('button', { name: 'Add a segment' }).click()
  await page.getByLabel('Number of mandatory stops').fill('1')
  await page.getByRole('textbox', { name: 'Minimum stop', exact: true }).fill('4 s')
  await page.getByLabel('A stop is timed from').selectOption('the car stopped')
  await page.getByLabel('A stop is timed to').selectOption('wheels turning')
  await page.getByLabel('GO comes after the minimum by').fill('1 s')
  for (const clock of ['the segment’s clock', 'the minimum stop', 'driving time']) {
    await page.getByLabel(`During a track call, ${clock}`).selectOption('holds')
  }
  await page.getByLabel('Name of the car').fill('Gull 3')
  for (const name of ['Ida Quill', 'Tom Wick', 'Bea Lorne']) {
    await page.getByLabel('Name of a person').fill(name)
    await page.getByRole('button', { name: 'Add a person' }).click()
  }
  await layThePlan(page)
}

/** Ida drives and Bea marshals for five minutes; then Tom drives, and Ida relieves Bea. */
async function layThePlan(page: Page): Promise<void> {
  const stint = page.getByRole('button', { name: 'Add a stint' })
  const marshal = page.getByRole('button', { name: 'Add a marshal' })
  await stint.click()
  await page.getByLabel('Segment 1 0:00: to').fill('0:05')
  await stint.click()
  await stint.click()
  await marshal.click()
  await page.getByLabel('Segment 1 0:00: to').last().fill('0:05')
  await page.getByLabel('Segment 1 0:00: person').last().selectOption('Bea Lorne')
  await page.getByLabel('Segment 1 0:00: post').fill('2')
  await marshal.click()
  await page.getByLabel('Segment 1 0:05: person').last().selectOption('Ida Quill')
  await page.getByLabel('Segment 1 0:05: post').fill('2')
}
