// What somebody new to the trade asks, each at a prompt where it comes up, and the passage it has to be answered from. A trial
// counted them; the last list is of those that no paper here answers, which is said.
import { describe, expect, it } from 'vitest'
import { NOTHING_FOUND } from '../../../src/core/talk/answer-asked.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { BORE_LINES, GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'

const TEMPERATURES = ['1', '1', '71.2', '70.4']
const AT = {
  tell: new Walk().keys('RO', 'TC-401-1'),
  locks: new Walk().toGate(),
  words: new Walk().toGate().keys(...LOCK_LINES),
  gas: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES),
  burns: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, '20.9'),
  failed: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, '17'),
  stopped: new Walk().toBore().keys('stop', '1', 'gas was smelt', 'RO'),
  tag: new Walk().keys('RO'),
  witness: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES),
  wipe: new Walk().throughGate(),
  pick: new Walk().throughGate().keys(...TEMPERATURES),
  set: new Walk().throughGate().keys(...TEMPERATURES, '1'),
  bore: new Walk().toBore(),
  second: new Walk().toBore().keys('9.5033'),
  strip: new Walk().toBore().keys(...BORE_LINES),
  surface: new Walk().toBore().keys(...BORE_LINES, '1', '9.5008', '9.5008', '9.5007', '9.5007', '9.7502'),
  decide: new Walk().toVerdict(),
  pull: new Walk(shippedDefs('piston-pull.yaml')).keys('RO', 'TC-401-1'),
} as const

const term = (name: string, words: string) => new RegExp(`Terms of the trade, ${name}:\\n {2}"[^"]*${words}`)

/** At which prompt, what is asked, and what the first passage of the answer says. */
const ASKED: readonly (readonly [keyof typeof AT, string, RegExp])[] = [
  ['tell', 'who is my partner?', term('partner', 'The other mechanic, or a lead')],
  ['tell', 'what is a permit?', term('permit', 'paper by which a site allows')],
  ['tell', 'what is a crank?', term('crank', 'rotation of the driver')],
  ['tell', 'which end is the head end?', term('head end', 'away from the crank')],
  ['tell', 'what does CE mean?', term('crank end', 'nearest to the crank')],
  ['tell', 'when may I go home?', term('end of a shift', 'hand over')],
  ['locks', 'what is a hold point?', term('hold point', 'nobody passes until')],
  ['locks', 'whose lock is it?', term('lock out', 'stays with the one who depends on it')],
  ['words', 'why do I try to start it?', term('try-start', 'the right machine is locked')],
  ['words', 'what is a bleed?', term('bleed', 'opening to air')],
  ['words', 'is a brake enough?', term('block', 'A brake, or friction, is no block')],
  ['words', 'what is a bump test?', term('bump test', 'no calibration')],
  ['gas', 'why oxygen first?', /oxygen comes first because some meters/],
  ['gas', 'what is LEL?', term('LEL', 'least share of a gas in air')],
  ['gas', 'can I smell H2S?', term('H2S', 'only a meter tells')],
  ['gas', 'how much oxygen is too little?', /^The limit of this line:\n.*breathe: at least 19\.5[^\n]*$/],
  ['gas', 'what is the breathing zone?', term('breathing zone', 'face of whoever works')],
  ['gas', 'why low and high?', term('low and high', 'heavier than air')],
  ['wipe', 'how long is the gas test good?', /lapses \d\d:\d\d/],
  ['witness', 'who may witness?', /May witness: ML M\. Lind, KH K\. Haas or PB P\. Bright/],
  ['witness', 'what does a witness do?', term('witness', 'looks for themselves')],
  ['wipe', 'can I use gasoline?', /never gasoline or kerosene/],
  ['wipe', 'why do I wipe it?', /reads as a bore a thousandth smaller/],
  ['wipe', 'why count the rags?', term('rags and tools', 'tool left inside')],
  ['wipe', 'what is the swept length?', term('swept length', 'rings run over')],
  ['pick', 'which gauge?', /Barover chooses none/],
  ['pick', 'why two gauges?', term('several gauges', 'One that is taken')],
  ['pick', 'why is M-1 not allowed?', /its calibration lapsed/],
  ['set', 'what is a setting standard?', term('setting standard', 'known size')],
  ['set', 'may I adjust the gauge?', /Do not adjust the gauge/],
  ['set', 'how do I hold the gauge?', term('holding a gauge', 'square to the bore')],
  ['set', 'why measure the temperature?', term('gauge temperature', 'grows as it warms')],
  ['bore', 'what is ring travel?', term('ring travel', 'rings sweep')],
  ['bore', 'what does most and least mean?', term('most and least', 'least of the mosts')],
  ['bore', "what is 12 o'clock?", term('clock positions', 'seen from the head end')],
  ['bore', 'why top to bottom?', /gravity wears the bottom most/],
  ['bore', 'how much wear is allowed?', /This job judges by these limits/],
  ['bore', 'can I skip a place?', term('not applicable', 'HOLD then')],
  ['bore', 'what is a thou?', term('thousandth', 'part of an inch')],
  ['bore', 'what is an axis?', term('places of measuring', 'in two directions')],
  ['bore', 'what if I drop the micrometer?', term('dropped gauge', 'held against its standard')],
  ['words', 'what if I feel gas at the bleed?', /^FIRST: come out/],
  ['words', 'how do I stop it?', /blocks this job at once/],
  ['locks', 'who is RO?', /R\. Oduya, mechanic/],
  ['second', 'why twice?', /lifting the instrument out between|slip shows/],
  ['second', 'what if it reads differently the second time?', term('repeats', 'one more is asked')],
  ['second', 'which one counts?', term('repeats', 'count together')],
  ['second', 'I keyed the wrong figure, what now?', /back goes to the last answer/],
  ['strip', 'what is an unswept strip?', term('unswept strip', 'no ring has run on')],
  ['strip', 'what is a counterbore?', term('counterbore', 'cut larger on purpose')],
  ['strip', 'what if there is no strip?', /Without one, wear is told from sizes on record, or not at all/],
  ['surface', 'what is scoring?', term('scoring', 'Grooves along a bore')],
  ['surface', 'what is a ridge?', term('ridge', 'end of ring travel')],
  ['surface', 'what do I do with the ridge?', term('ridge', 'a lead decides')],
  ['surface', 'is a scratch bad?', term('scoring', 'papers of the maker')],
  ['decide', 'what is a nonconformity?', term('nonconformance', 'not as it was asked for')],
  ['decide', 'what is a concession?', term('concession', 'given in writing')],
  ['decide', 'what does MONITOR mean?', term('MONITOR', 'share of it')],
  ['decide', 'can it be honed round?', term('hone', 'takes out neither taper')],
  [
    'decide',
    'what is the difference between rework and repair?',
    term('repair', 'After rework it conforms again'),
  ],
  ['pull', 'what is packing?', term('packing', 'around the piston rod')],
  ['pull', 'why an air drill?', /air-driven, as an electric one sparks/],
  ['pull', 'what gap is too much?', /Limit of this machine|Fall-back limit/],
  ['pull', 'why leave the nuts on?', term('valve cap', 'slacked evenly and stay on')],
  ['pull', 'what is a hollow piston?', term('hollow piston', 'shut there under pressure')],
  ['pull', 'what is a crosshead?', term('crosshead', 'slides in a straight line')],
  ['pull', 'what is barring over?', term('bar over', 'slowly by hand')],
  ['pull', 'what is a rider band?', term('rider band', 'carries its weight')],
  ['pull', 'can I straighten a bent rod?', /scrap|not straightened|never straightened/],
  ['pull', 'may I reuse the old gasket?', term('gasket', 'new')],
  ['words', 'gas is coming out', /^FIRST: come out[\s\S]*the word stop/],
  ['words', 'it did turn a bit', /^FIRST: come out[\s\S]*NO START is not typed/],
  ['words', 'yes, it moved', /^FIRST: come out/],
  ['witness', 'it smells of gas', /^FIRST: come out/],
  ['gas', 'I hear a leak', /^FIRST: come out/],
  ['tag', 'it moved', /^FIRST: come out/],
  [
    'failed',
    'what do I do now',
    /^FIRST: come out[\s\S]*It fell: a gas reading[\s\S]*ALL OUT[\s\S]*shown anew/,
  ],
  ['stopped', 'what now?', /^STOP is open[\s\S]*A lead releases/],
  ['tell', 'what do I do now?', /^Key done, or press Enter alone, once it is done/],
  ['witness', 'I am alone', /alone nobody passes it/],
  ['witness', 'im alone', /alone nobody passes it/],
  ['witness', 'sorry, im on my own.', /alone nobody passes it/],
  ['tag', 'Im alone', /^Signed on: RO/],
  ['witness', 'nobody here to show', /alone nobody passes it/],
  ['witness', 'can the lead witness over the phone', /^A witness stands there and looks/],
  ['witness', 'KH is on the phone, can he say so', /^A witness stands there and looks/],
  [
    'burns',
    'is 12 too much',
    /OUT OF ITS LIMIT, above 10 %LEL[\s\S]*The limit of this line: flammables where people breathe: at most 10 /,
  ],
  ['stopped', 'how do I get it lifted', /^A lead releases a STOP[\s\S]*May lift this one: KH/],
  ['wipe', 'how long is the test good', /lapses \d\d:\d\d/],
  ['bore', 'can I take the locks off now', /^Every lock stays on[\s\S]*No sheet of this job/],
  ['pull', 'when do the locks come off?', /^Every lock stays on/],
  ['bore', 'which micrometer do I use', /^M-3, Inside micrometer/],
  ['bore', 'how do I hold it', term('holding a gauge', 'square to the bore')],
  ['bore', 'how do I swing it?', /Swing it across for the MOST/],
  ['bore', 'what is most and least?', term('most and least', 'two turning points')],
  ['bore', 'how far in do I go?', /about 3\.10 in from the head-end face[\s\S]*Within ring travel/],
  ['surface', 'how deep a scratch is too deep?', term('scoring', 'how deep one may be')],
  ['wipe', 'same thermometer?', term('same thermometer', 'same in both')],
  ['bore', 'can I skip this step?', term('not applicable', 'cannot be taken')],
  ['tell', 'what if the tag is missing?', term('tag plate', 'a lead finds out')],
  ['tell', 'where is the tag plate?', term('tag plate', 'It is read there')],
  ['wipe', 'is that in Fahrenheit or Celsius?', term('degree', 'left of where it is keyed')],
  ['wipe', 'is that in F or C?', term('degree', 'left of where it is keyed')],
  ['bore', 'what is a release?', term('release', 'ends a STOP')],
  ['bore', 'does anybody read my notes?', term('note', 'whoever reads the job')],
  ['decide', 'what happens to the machine now?', term('handing back', 'moves nothing')],
  ['set', 'what if the set-check is not as before?', term('set-check', 'is in doubt')],
  ['bore', 'what is a lead?', term('lead', 'crew file names')],
  [
    'locks',
    'I am alone here, can I do this?',
    /alone nobody passes it[\s\S]*EXAMPLE: alone, sign as the others too/,
  ],
]

const answer = (at: keyof typeof AT, line: string) => {
  const { engine, state, talk, now } = AT[at]
  return hear(engine.defs, state, talk, line, now)
}

describe('a question of somebody new', () => {
  it('is one of sixty', () => {
    expect(ASKED.length).toBeGreaterThanOrEqual(60)
    expect(new Set(ASKED.map(([, line]) => line)).size).toBe(ASKED.length)
  })

  it.each(ASKED)('at %s: %s', (at, line, says) => {
    const { input, say } = answer(at, line)
    const all = say.join('\n')
    expect(all).not.toContain(NOTHING_FOUND)
    expect(all).toMatch(says)
    expect(input).toBeNull()
  })
})
