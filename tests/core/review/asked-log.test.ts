// Questions that the log answers: each kind in the words that people have for it, with the entries it rests on; and near ones that are
// another kind's, or nobody's.
import { describe, expect, it } from 'vitest'
import { LOG_QUESTIONS } from '../../../src/core/review/asked-log.ts'
import { answered } from '../../helpers/answered.ts'
import { Walk } from '../../helpers/example.ts'

const kindOf = (text: string) =>
  LOG_QUESTIONS.find(({ asked }) => asked.some((one) => one.test(text.toLowerCase())))?.like ?? null

const WORDINGS: Readonly<Record<string, readonly string[]>> = {
  'what is 7.3': ['7.3', 'what is 7.3', 'place 7.3', 'what was 7.3 then?', 'show 7.3'],
  'who may decide': [
    'who may decide',
    'who can sign for it',
    'who is allowed to release the stop',
    'may KH decide',
    'who else could accept it',
  ],
  'why can it not close': [
    'why can it not close',
    "why can't it be closed",
    'why is it still open',
    'what keeps it from closing',
    'what is in the way',
    'why wont it close',
  ],
  'who released the stop': [
    'who released the stop',
    'who called the stop',
    'who lifted the STOP?',
    'was the stop released',
    'why was the job stopped',
    'was there a stop',
  ],
  'is it proved whole': [
    'is it proved whole',
    'is the log whole',
    'can the log be trusted',
    'was the record tampered with',
    'can I trust the log',
  ],
  'in what order did it happen': [
    'in what order did it happen',
    'what happened first',
    'what was the sequence of events',
    'timeline',
    'how did the day go',
  ],
  'when was the gas tested': [
    'when was the gas tested',
    'who tested the air',
    'was oxygen measured',
    'when did they sniff it',
    'last gas test',
    'when was H2S last read',
  ],
  'which reading made it REPLACE': [
    'which reading made it REPLACE',
    'what made it rework',
    'which figure is out',
    'which place is past its limit',
    'what governs the verdict',
  ],
  'who took lock L-103 off': [
    'who took lock L-103 off',
    'who removed the lock',
    'is the tag still on',
    'when was the blind put in',
    'which locks were hung',
  ],
  'is T-9 still on': [
    'is T-9 still on',
    'who took T-9 off',
    'where is L-101',
    'was V-118 hung',
    'who hung L-12',
  ],
  'was M-1 used': [
    'was M-1 used',
    'what did M-3 read',
    'which readings are by M-3',
    'did RO pick M-1',
    'how was M-3 calibrated',
  ],
  'which instruments were used': [
    'which instruments were used',
    'what gauges did they use',
    'with which micrometer',
    'which meter was picked',
    'what tools were used',
  ],
  'what was corrected': [
    'what was corrected',
    'who corrected it',
    'were any figures altered',
    'was anything keyed again',
    'how many corrections',
  ],
  'is the pocket leak fixed': [
    'is the pocket leak fixed',
    'was the seat repaired',
    'what was done about the leak',
    'did anybody fix the check valve',
    'what became of the leak',
  ],
  'who decided and why': [
    'who decided and why',
    'who accepted it',
    'who chose to rework it',
    'what decisions were made',
    'who approved it?',
  ],
}

/** Near one kind, and no question of it. */
const NEAR: readonly (readonly [string, string])[] = [
  ['who may decide', 'who decided'],
  ['who may decide', 'may the bore be honed'],
  ['why can it not close', 'why did the valve not seat'],
  ['why can it not close', 'what holds the end cover'],
  ['who released the stop', 'what stops it from closing'],
  ['who released the stop', 'who is the lead'],
  ['is it proved whole', 'is the seal intact'],
  ['is it proved whole', 'is the ring whole'],
  ['in what order did it happen', 'in what order are the nuts tightened'],
  ['in what order did it happen', 'what happened'],
  ['when was the gas tested', 'when was the gas let in'],
  ['when was the gas tested', 'is the air cooler leaking'],
  ['which reading made it REPLACE', 'what was measured'],
  ['which reading made it REPLACE', 'who made the ring'],
  ['who took lock L-103 off', 'is the lock nut off'],
  ['who took lock L-103 off', 'who took the readings'],
  ['what was corrected', 'is the clearance correct'],
  ['is the pocket leak fixed', 'where is the pocket'],
  ['who decided and why', 'who signed'],
  ['what is 7.3', 'is 9.5033 good'],
]

const walk = new Walk().toVerdict().keys('1', 'KH', 'inside its limits, read again not later than 8000 h', '')

const answer = (keyed: string, of = walk) => answered(of, keyed)

const seqOf = (of: Walk, type: string) => of.entries.find((e) => e.type === type)?.seq

const NOT_ANSWERED = /^$|^That is not answered here|^Not found by its words/

describe('a question of the log', () => {
  for (const [like, all] of Object.entries(WORDINGS))
    it(`${like}, in ${all.length} wordings`, () => {
      expect(all.length).toBeGreaterThanOrEqual(5)
      for (const text of all) expect([text, kindOf(text)]).toEqual([text, like])
      // Of a pocket that leaks this bore has nothing, and that is said.
      const none = like === 'is the pocket leak fixed' ? /^$|^That is not answered here/ : NOT_ANSWERED
      for (const text of all) expect(answer(text), text).not.toMatch(none)
    })

  it.each(NEAR)('%s does not catch: %s', (like, text) => {
    expect(kindOf(text)).not.toBe(like)
  })

  it('is never answered with a word that something is safe, fixed or allowed', () => {
    for (const text of Object.values(WORDINGS).flat())
      expect(answer(text), text).not.toMatch(/\byes\b|\bis (?:safe|fixed|ready)\b|\bmay run\b/i)
  })

  it('names some kinds where another was asked, and no more than are read', () => {
    const [heading, likes, ...rest] = answer('how are you?').split('\n')
    expect(heading).toMatch(/^That is not answered here/)
    expect(likes?.split('; ')).toEqual(
      expect.arrayContaining(['who signed', ...LOG_QUESTIONS.slice(0, 2).map(({ like }) => like)]),
    )
    expect(rest.length).toBeLessThan(4)
  })
})

describe('its answer rests on entries', () => {
  it('the decision with its entry and its reason, and on nobody where it is closed', () => {
    expect(answer('who decided and why')).toMatch(
      /NC-1 Bore judged: \w+: accept, by KH, .* \(entry \d+\)\nWhy: inside its limits, read again not later than 8000 h\./,
    )
    expect(answer('who decided and why')).toContain(`(entry ${seqOf(walk, 'disposition.set')})`)
    expect(answer('who may decide')).toMatch(/^Nobody any more: the job is closed/)
    expect(answer('why can it not close')).toContain(`(entry ${seqOf(walk, 'job.closed')})`)
  })

  it('who may decide names leads who did not measure, where a decision is asked', () => {
    const open = new Walk().toVerdict()
    expect(answer('who may decide', open)).toMatch(/Asked next is 19 [^\n]*: [^\n]*KH K\. Haas/)
    expect(answer('who may decide', open)).not.toMatch(/Asked next[^\n]*RO R\. Oduya/)
    expect(answer('why can it not close', open)).toMatch(/^In the way of its close\n/)
  })

  it('a place by its number has each keying and what stands', () => {
    const text = answer('7.3')
    expect(text).toMatch(/^7\.3 Bore, CENTRE of ring travel, TOP TO BOTTOM\n/)
    expect(text).toMatch(/What stands: \d\.\d{4} in .* \(entry \d+\)/)
    expect(answer('7.99')).toMatch(/has no place 99$/)
  })

  it('an instrument that no entry has is told so, and is called unused by no more than that', () => {
    expect(answer('was M-1 used')).toMatch(/^M-1 is in no entry[\s\S]*never keyed the log does not tell/)
    expect(answer('was M-3 used')).toMatch(/^M-3 is in this log\n[\s\S]*7 Bore: \d+ figures by it \(/)
  })

  it('a lock has who keyed it on and that nothing tells it off; one that no entry has is not made up', () => {
    expect(answer('who took lock L-103 off')).toMatch(/L-103, [^\n]* at hold point 2: [\s\S]*\(entry \d+\)/)
    expect(answer('who took lock L-999 off')).toMatch(/^The log does not tell of L-999: no entry has it/)
  })

  it('gas tests stand by hold point, each with its entry', () => {
    expect(answer('when was the gas tested')).toMatch(
      /^Gas tests as they were keyed[\s\S]*06:\d\d RO: \[x\] oxygen where people breathe {2}20\.9 %vol {2}G-7 \(entry \d+\)/,
    )
  })

  it('what made it so names the figures that govern, with their entries', () => {
    expect(answer('which reading made it MONITOR')).toMatch(
      /18 Bore judged: MONITOR \(entry \d+\)\n[^\n]* governs: [\s\S]*7\.\d Bore, [^\n]*\(entry \d+\)/,
    )
    expect(answer('which reading made it REPLACE')).toBe('No verdict of this log is REPLACE')
  })

  it('a thing that nothing found is of is not told of', () => {
    expect(answer('is the pocket leak fixed')).toMatch(/^Not found by its words: no entry has pocket, leak/)
    expect(answer('is the bore fixed')).toMatch(/^Whether it is fixed no record tells/)
  })

  it('the order has its entries one after the other, and whole is told with how many', () => {
    const seqs = [...answer('in what order did it happen').matchAll(/\(entry (\d+)\)/g)].map(([, n]) =>
      Number(n),
    )
    expect(seqs.length).toBeGreaterThan(4)
    expect(seqs).toEqual([...seqs].sort((a, b) => a - b))
    expect(answer('is it proved whole')).toContain(
      `${walk.entries.length} entries, 0 to ${walk.entries.length - 1}.`,
    )
  })

  it('a STOP has who called it and who released it', () => {
    const stopped = new Walk().toBore().keys('stop')
    expect(answer('who released the stop', stopped)).toMatch(/^STOPs of this log/)
    expect(answer('who released the stop')).toMatch(/^No STOP is in this log/)
    expect(answer('who may decide', stopped)).toMatch(/^Who may release the STOP/)
  })
})
