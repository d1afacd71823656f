/** What the person at this screen must know of the device itself, until they have said so. */
import type { Trouble } from './port.ts'

const COPY_NOT_KEPT: Trouble = {
  id: 'copyNotKept',
  sentence:
    'This device has no room for its copy of the log. All goes on, but reload this page only while the server is there.',
}
const WALL_GONE: Trouble = {
  id: 'wallGone',
  sentence: 'This device no longer has the wall: it is crew again.',
}

export class Notices {
  list = $state.raw<readonly Trouble[]>([])

  /** The device took a press, but not the copy of the log: a reload needs the server. */
  readonly copyNotKept = (): void => this.#add(COPY_NOT_KEPT)
  readonly wallGone = (): void => this.#add(WALL_GONE)

  dismiss(id: string): void {
    this.list = this.list.filter((one) => one.id !== id)
  }

  #add(notice: Trouble): void {
    this.dismiss(notice.id)
    this.list = [...this.list, notice]
  }
}
