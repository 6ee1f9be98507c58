// Faults of a cylinder that is opened: what a jacket, a pocket and a cover still hold, and what lies in the bore.
import type { Chance } from './chance.ts'
import { COMMON, type Fault, OPEN, type Shows } from './fault.ts'
import type { OpenTruth } from './parts.ts'

const BOOK = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'
const STOP: Shows = 'stop'

function opened(change: (truth: OpenTruth, chance: Chance) => Partial<OpenTruth>): Fault['apply'] {
  return (machine, chance) => {
    const { opened: truth } = machine.parts
    if (truth === null) throw new Error('a machine that is not opened')
    return { ...machine, parts: { ...machine.parts, opened: { ...truth, ...change(truth, chance) } } }
  }
}

export const OPEN_FAULTS: readonly Fault[] = [
  {
    id: 'jacket-hot',
    name: 'The jacket is still hot',
    level: 1,
    shows: STOP,
    procedures: [OPEN],
    at: ['drained/jacket_temp'],
    hint: 'A thermometer on the lowest point of the jacket.',
    teaches: 'What stands in the lowest passage comes out with the head. Scalding is a matter of a second.',
    source: COMMON,
    consequence: 'The water from the head passages came down your sleeve.',
    apply: opened((_truth, chance) => ({ jacketOverK: chance.between(38, 60) })),
  },
  {
    id: 'jacket-runs',
    name: 'The jacket is not drained: it runs again once it has air',
    level: 2,
    shows: STOP,
    procedures: [OPEN],
    at: ['drained/dry'],
    hint: 'A jacket without air holds its water up like a straw. Is the top vent open?',
    teaches: 'A drain that stops may be a jacket that has no air. Top vent first, then it is waited for.',
    source: `${BOOK}, p. 372`,
    consequence: 'It emptied into the bore, and onto whoever drew the head.',
    apply: opened(() => ({ isDry: false })),
  },
  {
    id: 'pocket-holds',
    name: 'The clearance pocket has kept its gas',
    level: 3,
    shows: STOP,
    procedures: [OPEN],
    at: ['drained/pocket_silent'],
    hint: 'The pocket is a vessel of its own. What does its own bleed say?',
    teaches: 'Behind its shut valve a pocket keeps its gas when the cylinder has lost all.',
    source: `${BOOK}, p. 202`,
    consequence: 'The head was lifted with a charged vessel in it, and its cover looked at the crew.',
    apply: opened(() => ({ isPocketEmpty: false })),
  },
  {
    id: 'cover-hisses',
    name: 'Gas stands behind a valve cover, whatever gauge and bleed said',
    level: 4,
    shows: STOP,
    procedures: [OPEN],
    at: ['slack'],
    hint: 'The nuts stay on for one reason. What do you hear as the seal breaks?',
    teaches:
      'Gas behind a valve that hung shows at no gauge and no bleed. The slack nuts are the last thing that holds the cover.',
    source: `${BOOK}, p. 383`,
    consequence: 'With the nuts off the cover would have left with its cage.',
    apply: opened(() => ({ hisses: true })),
  },
  {
    id: 'pocket-end-other',
    isAlone: true,
    name: 'The pocket sits at another end than the record has',
    level: 2,
    shows: 'seen',
    procedures: [OPEN],
    at: ['pocket_seat'],
    hint: 'Where do stem and bleed come out of the cylinder?',
    teaches:
      'One in the head is lifted with it; one at the crank end stays beside your hands. The record is mended before anything is opened.',
    source: COMMON,
    apply: opened(({ pocketEnd }) => ({ pocketEnd: pocketEnd === 'head' ? 'crank' : 'head' })),
  },
  {
    id: 'jacket-tells',
    name: 'The jacket water tells of a crack or a gasket',
    level: 2,
    shows: 'seen',
    procedures: [OPEN],
    at: ['jacket_water'],
    hint: 'Hold some of it in a jar, against the light.',
    teaches: 'Gas or oil in the water is a cracked liner or a head gasket, known before a nut is turned.',
    source: COMMON,
    apply: opened((_truth, chance) => ({ water: chance.pick(['bubbles', 'oil']) })),
  },
  {
    id: 'pieces-inside',
    name: 'A piece lies in the bore',
    level: 3,
    shows: 'seen',
    procedures: [OPEN],
    at: ['look_in'],
    hint: 'Lamp along the bottom, up to the counterbore.',
    teaches: 'A piece has a place it came from, and a valve or a ring that wants it back.',
    source: COMMON,
    apply: opened(() => ({ inside: 'pieces' })),
  },
  {
    id: 'black-dust',
    name: 'Black dry dust in the bore: it can catch fire',
    level: 3,
    shows: 'seen',
    procedures: [OPEN],
    at: ['look_in'],
    hint: 'What comes away on the glove?',
    teaches:
      'Iron sulfide lights by itself as it dries. It is kept wet, under a plan by number, with a watch.',
    source: COMMON,
    apply: opened(() => ({ inside: 'black_dust' })),
  },
]
