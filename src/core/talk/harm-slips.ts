// Slips in the words that harm is told in: whoever sees it has no time to key them well. Heard by themselves, without the papers of a
// job, as words of danger are heard at every prompt.
import { slipsApart } from '../lib/wording.ts'

/** The words that the patterns of harm go by, and in which a slip is most likely. */
const HARM = (
  'crank crankshaft flywheel driver motor engine compressor piston cylinder machine block blocks blocking lock locks padlock padlocks valve valves ' +
  'bleed breaker blind pressure start starts started starting turns turned turning moves moved moving gas alarm meter leak leaks leaking ' +
  'coming comes hissing smell smells hurt trapped caught hand hands finger fingers inside someone somebody fell slipped opened running ' +
  'breathe breathing faint dizzy unconscious fainted collapsed beeping ringing friend alone allowed witness fire burning'
).split(' ')

/** What gloves make of the shortest: too short to tell a slip in by its letters. */
const SHORT: Readonly<Record<string, string>> = {
  lok: 'lock',
  lck: 'lock',
  loks: 'locks',
  lcok: 'lock',
  blok: 'block',
  blcok: 'block',
  gsa: 'gas',
  ags: 'gas',
  teh: 'the',
  wat: 'what',
  waht: 'what',
  wats: 'what is',
  hwat: 'what',
  si: 'is',
  fone: 'phone',
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
    'look looks looked looking lack luck lucky black blocked blink blond bland blade crane cranes crack cracks cracked cranked cranky clank drive ' +
    'drives driven diver rider riders value values halve salve breed bleeds bleep bleak blend blends breaks breakers baker beaker bleeder ' +
    'stars stark stare stair smart stand stands state stated stating turn tunes turner burns burned burnt moved mover modes mode model moles ' +
    'leap lead leads lean leaf leave leaves leaning leaping coming combs cones homes comet cane lake weak peak metre metres metal meters matter ' +
    'later hunt hurl hunts hard harms harm land hands handy handle hang hangs finer fines singer inside insides inner insight fill fall fold ' +
    'flipped shipped slips ripped openers opener running runner ruining cutting caught taught fires firm fine file filed fired five fines wire ' +
    'blinds blank blanks pressures presses pressed pistons cylinders machines motors engines starter startled small spell swell fells feel felt ' +
    'cell bell tell well sell dell fail falls faint paint faintly faults brush breath breathes breather bleeding burning turning tuning moving ' +
    'shell shells along rigging cores copes stats finders leafs flint tuned tunes bloch compressors leans lacks tapped blued breaths loving missing kissing kisses locked locker lockers pack packs rock rocks dock clock clocks sock socks'
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
