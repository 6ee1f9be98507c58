// Slips in a question at a review: each word is mended by itself, everyday words stay, and none becomes a word of harm, a tag or a number.
import { describe, expect, it } from 'vitest'
import { questionMended } from '../../../src/core/review/asked-slips.ts'
import { DESK_WORDS } from '../../../src/core/review/desk-vocabulary.ts'

describe('a question with slips', () => {
  it.each([
    ['wen did they stpo', 'when did they stop'],
    ['wat went worng', 'what went wrong'],
    ['wat was renewd', 'what was renewed'],
    ['was gas chekd b4 openng', 'was gas checked before opening'],
    ['wen did the drver start', 'when did the driver start'],
    ['whose lmits were used', 'whose limits were used'],
    ['is anythng stil on it', 'is anything still on it'],
    ['hw long did it tke', 'how long did it take'],
    ['hwo long did it take', 'how long did it take'],
    ['wy hold', 'why hold'],
    ['wich came off first', 'which came off first'],
    ['who witnesd the opening', 'who witnessed the opening'],
    ['did they chnge the rings', 'did they change the rings'],
    ['why is bore rewrk', 'why is bore rework'],
    ['was the bore in tolerence', 'was the bore in tolerance'],
    ['how tigt is the nut', 'how tight is the nut'],
    ['who droped it', 'who dropped it'],
    ['did they close it b4 they went', 'did they close it before they went'],
  ])('%s', (keyed, meant) => {
    expect(questionMended(keyed)).toBe(meant)
  })
})

/** Near to a word of the desk, and common; from a list of the commonest words of English and from the shipped procedures. */
const EVERYDAY = (
  'shop shops step steps stow slop stamp strip stub stud studs shim shims seat seats shaft shafts thrust charge charged chance value values ' +
  'cold could world would heard head hear near nearby older order smart start state stated starred stuart lapped lapsed looks locks lacks ' +
  'liner linear liver rides riders rivers packet pocket boxes bones bores world wound sweet sheet skill still stepped stopped chose close ' +
  'clone closed cloned shift shirt swift sift check cheek chuck chock drier driver diver drover nodes notes noses alter after aster blacks ' +
  'blocks value valve vale vested vented tasted tested token taken wheat what while where were there here then than this that with within ' +
  'without from form felt fell fall full fuel tell tall bell belt bolt bolts nut nuts plug plus pump pumps bump lump lamp damp clamp crank ' +
  'crack cracks track trace grease please price prime primer paper proper power lower flow glow slow show snow know knew knock clock flock ' +
  'weight height eight light night sight might fight tights tide side size wide wine line lines mine mind kind find fine file fire wire tire ' +
  'tile pile pipe pine pins pint paint point joint print sprint spring string strong wrong wring thing think thin thick tick stick stock ' +
  'stack slack black block clock lock luck lick link sink sank tank thank bank back pack pick peak speak break bread broad board boat coat ' +
  'cost cast case cash crash flash fresh flesh shell smell small stall steel steal steam stem item time lime limb lift left loft soft sort ' +
  'port part parts cart chart heart hard herd held help heap heat meat mean meant measure pleasure pressure treasure leisure mechanic carry ' +
  'marry hurry curry berry ferry merry worry sorry story glory history factory victory water wafer later layer lawyer player plate late gate ' +
  'rate date data note rote wrote write white quite quiet suite suit fruit front month mouth south youth truth tooth booth both cloth clothe ' +
  'house horse course source force fence hence since sense tense dense dance dinner winner inner outer other mother brother bother rather'
).split(' ')

describe('what stays as it was keyed', () => {
  it('everyday words', () => {
    expect(EVERYDAY.length).toBeGreaterThan(300)
    expect(EVERYDAY.filter((word) => questionMended(word) !== word)).toEqual([])
  })

  it('each word that questions are known by', () => {
    expect(DESK_WORDS.filter((word) => questionMended(word) !== word)).toEqual([])
  })

  it.each([
    'was l-103 on',
    'is lokc-103 on',
    'what is entry 214',
    'was b4 in calibration',
    'is b4 open',
    'did ro and kh sign',
    'was stpo-1 used',
    'what about stpo2',
    "couldn't it",
  ])('a tag, a number, initials, a word cut by a mark: %s', (text) => {
    expect(questionMended(text)).toBe(text)
  })

  it('nothing becomes a word of harm: none of those is a word that a slip is mended into', () => {
    const harm =
      'hurt leak leaks leaking burn burning fire smoke trapped caught crushed hissing smell smells dizzy faint unconscious alarm bleeding help danger dangerous dead killed injured blood gas explosion missing safe ready'.split(
        ' ',
      )
    expect(harm.filter((word) => DESK_WORDS.includes(word))).toEqual([])
    for (const slip of ['hurtt', 'trapepd', 'alrm', 'smke', 'burnig', 'dangr', 'sfae'])
      expect(questionMended(slip)).toBe(slip)
  })
})
