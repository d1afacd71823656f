/** Who marshals, when and where. */
import { marshalShift } from './marshal-shift.ts'
import { marshalWhileDriving } from './marshal-while-driving.ts'
import { marshalsOwed } from './marshals-owed.ts'
import { postByLane } from './post-by-lane.ts'
import { relief } from './relief.ts'
import { sitOutDuty } from './sit-out-duty.ts'

export const MARSHAL_CHECKS = {
  marshalsOwed,
  marshalWhileDriving,
  postByLane,
  marshalShift,
  relief,
  sitOutDuty,
}
