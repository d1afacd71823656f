/** Who marshals, when and where. */

const TO_COME = { notChecked: 'to come' }

export const MARSHAL_CHECKS = {
  marshalsOwed: TO_COME,
  marshalWhileDriving: TO_COME,
  postByLane: TO_COME,
  marshalShift: TO_COME,
  relief: TO_COME,
  sitOutDuty: TO_COME,
}
