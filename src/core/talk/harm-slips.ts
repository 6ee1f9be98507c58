// Slips in the words that harm is told in: whoever sees it has no time to key them well. Heard by themselves, without the papers of a
// job, as words of danger are heard at every prompt.
import { COMMON_SLIPS } from '../lib/slips.ts'
import { slipsApart } from '../lib/wording.ts'

/** The words that the patterns of harm go by, and in which a slip is most likely; none is shorter than a slip can be told in. */
const HARM = (
  'crank crankshaft flywheel driver motor engine compressor piston cylinder machine block blocks ' +
  'blocking locks padlock padlocks valve valves bleed breaker blind pressure start starts started ' +
  'starting turns turned turning moves moved moving alarm meter leaks leaking coming comes hissing ' +
  'smell smells trapped caught hands finger fingers inside someone somebody slipped opened running ' +
  'breathe breathing faint dizzy unconscious fainted collapsed beeping ringing friend alone allowed ' +
  'witness burning'
).split(' ')

/** What gloves make of the shortest: too short to tell a slip in by its letters. */
const SHORT: Readonly<Record<string, string>> = {
  ...COMMON_SLIPS,
  lok: 'lock',
  lck: 'lock',
  loks: 'locks',
  lcok: 'lock',
  blok: 'block',
  blcok: 'block',
  gsa: 'gas',
  ags: 'gas',
  si: 'is',
  smel: 'smell',
  smeel: 'smell',
  hrut: 'hurt',
  alrm: 'alarm',
  alram: 'alarm',
  dizy: 'dizzy',
  beping: 'beeping',
  beepin: 'beeping',
  sombody: 'somebody',
  frend: 'friend',
  hnad: 'hand',
  hnads: 'hands',
  alnoe: 'alone',
  strts: 'starts',
  truning: 'turning',
  trun: 'turn',
  unconcious: 'unconscious',
  uncon: 'unconscious',
  bleedin: 'bleeding',
}

/** Words of everyday and of the trade that are near to one of those and mean another thing. */
const OTHERS = new Set(
  (
    'looks black blink blond bland crane crack cranky clank drive drives driven diver value values breed ' +
    'bleeds bleep blend breakers beaker stars stark stare smart stated stating turner mover modes moles ' +
    'leads leaning leaping combs cones comet metre meters handy hangs finer insides shipped opener ' +
    'ruining blinds pressures pistons cylinders machines motors engines starter startled small spell ' +
    'swell breath breathes breather tuning shell shells along rigging cores copes stats finders leafs ' +
    'flint tuned bloch compressors leans lacks tapped blued breaths'
  ).split(' '),
)

/** Letters from which a slip of one is told from another word. */
const LEAST = 5

/** The line with its slips in those words put right; all else of it as it was keyed. */
export function harmMended(line: string): string {
  return line.replace(/[a-z]+/gi, (word) => {
    const key = word.toLowerCase()
    const short = Object.hasOwn(SHORT, key) ? SHORT[key] : undefined
    if (short !== undefined) return short
    if (key.length < LEAST || HARM.includes(key) || OTHERS.has(key)) return word
    const near = HARM.filter((one) => one.length >= LEAST && one[0] === key[0] && slipsApart(key, one) <= 1)
    return near.length === 1 ? (near[0] ?? word) : word
  })
}
