/** The bore inspection from the unswept strip to its verdict, with scoring found on the way. */
export const SCORED = [
  '1',
  '9.5008',
  '9.5008',
  '9.5007',
  '9.5007',
  '9.7502',
  '2',
  'at six o clock',
  '1',
  '1',
  '71.6',
  '70.8',
  '9.5001',
]
