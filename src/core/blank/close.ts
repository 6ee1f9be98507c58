// The end of a blank sheet: everything temporary, STOPs, what was found, and who signs for the whole.
import type { Definitions } from '../job/definitions.ts'
import { type BlankSection, box, boxes, empty, SIGNED, words } from './blank.ts'

export function closeSections(defs: Definitions): BlankSection[] {
  const placed = defs.steps.flatMap(({ step, number }) =>
    ('places' in step ? (step.places ?? []) : []).map(({ what }) => ({ what, number })),
  )
  return [
    {
      title: 'Register of what is temporary',
      pieces: [
        words(
          'Blinds, plugs, blocks, pins, slings, open bleeds, jumpers: written down when placed. Nothing starts until two people have seen each of them out.',
          'caution',
        ),
        boxes(
          [
            box('what', 3.6),
            box('where', 2.4),
            box('placed, time', 1.5),
            box('by', 1),
            box('out, time', 1.5),
            box('by', 1),
            box('and by', 1),
          ],
          [...placed.map(({ what, number }) => [`${what} (step ${number})`]), ...empty(4)],
        ),
      ],
    },
    {
      title: 'STOP',
      pieces: [
        words('Only a lead who did not call it releases a STOP. Every hold point is then proved anew.'),
        boxes(
          [
            box('why', 4),
            box('called by', 1.2),
            box('time', 1.3),
            box('all out and clear, time', 1.8),
            box('released by, lead', 1.6),
            box('time', 1.3),
          ],
          empty(3),
        ),
      ],
    },
    {
      title: 'Found out of the ordinary',
      pieces: [
        boxes([box('step', 0.8), box('what, and what a lead decided', 7), ...SIGNED], empty(5)),
        words('Changes, corrections and what was left out, each with why', 'strong'),
        boxes([box('step', 0.8), box('what', 7), ...SIGNED], empty(4)),
      ],
    },
    {
      title: 'Signed for the whole',
      pieces: [
        words(
          'Every page is here, every box is filled in or n/a, and everything temporary is accounted for or handed over above.',
        ),
        boxes(
          [box('', 2.4), box('name', 3), box('signature', 3), box('day and time', 2)],
          [['whoever did the work'], ['lead who did none of it']],
        ),
        words(
          `No verdict stands on this sheet, and it was no job in the program: hold points on paper were not enforced by Barover.`,
          'caution',
        ),
      ],
    },
  ]
}
