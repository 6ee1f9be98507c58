// The authoring guide does what it says: its lines go into the starter, `check` tells its slips as shown, its commands run
// and its answers walk the procedure to the end. Its minutes are reckoned anew.
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { renderDiagnostic, sourceLine } from '../../src/authoring/diagnostic.ts'
import { promptView } from '../../src/core/sheet/prompt-view.ts'
import { barover } from '../helpers/cli.ts'
import { ROOT } from '../helpers/example.ts'
import { answersIn, byHand, check, MACHINE, PROCEDURE, printedBy, STYLE } from './guide-files.ts'

const read = (path: string) => readFileSync(join(ROOT, path), 'utf8')
const GUIDE = read('procedures/README.md')
const STARTER = read('examples/first-procedure.yaml')
const ANSWERS = read('examples/first-procedure-answers.txt')

interface Chapter {
  readonly title: string
  /** Minutes in its heading. */
  readonly stated: number
  readonly body: string
}

const CHAPTERS: readonly Chapter[] = [
  ...GUIDE.matchAll(/^## (\d\. [^\n]*?) \((\d*)(½?) minutes\)\n(.*?)(?=^## )/gms),
].map(([, title = '', whole, half, body = '']) => ({
  title,
  stated: Number(whole) + (half === '' ? 0 : 0.5),
  body,
}))
const INTRODUCTION = GUIDE.slice(0, GUIDE.indexOf('## 1.'))

const FENCE = /^```(\w*)\n(.*?)^```$/gms

/** What stands in the fences of this word; '' for commands. */
function fences(text: string, word: string): string[] {
  return [...text.matchAll(FENCE)].flatMap(([, tag, inside = '']) => (tag === word ? [inside] : []))
}

const linesIn = (texts: readonly string[]) => texts.flatMap((text) => text.trimEnd().split('\n'))
const YOURS = /^( *)(.*?) +# yours$/
const MINE = fences(GUIDE, 'yours').map((text) => text.trimEnd().split('\n'))
const SLIPS = fences(GUIDE, 'slip')
const SLIP = MINE.flat().at(-1) ?? ''
const REPAIRED = SLIP.replace('0.06 }', '0.06 in }')

/** The starter with the first of its own lines replaced, in order, by these. */
function withMine(lines: readonly string[]): string {
  let n = 0
  return STARTER.split('\n')
    .map((line) => {
      const [, indent = '', text = ''] = YOURS.exec(line) ?? []
      if (text === '') return line
      const mine = lines[n]
      n += 1
      if (mine === undefined) return line
      // A line of the guide takes the place of one that begins alike, so that nobody has to search for it.
      const begin = (one: string) => /^[-\s{]*\w+:/.exec(one)?.[0]
      expect(begin(mine)).toBe(begin(text))
      return `${indent}${mine} # yours`
    })
    .join('\n')
}

const first = MINE[0] ?? []
const all = MINE.flat()
const DONE = withMine([...all.slice(0, -1), REPAIRED])

/** The answers of the starter, its last two lines replaced by those of the guide. */
function ownAnswers(): string {
  const own = linesIn(fences(GUIDE, 'answers'))
  return `${ANSWERS.trimEnd().split('\n').slice(0, -own.length).join('\n')}\n${own.join('\n')}\n`
}

const rendered = (text: string) =>
  check(new Map([[PROCEDURE, text]])).diagnostics.map((one) =>
    renderDiagnostic(one, sourceLine(text, one.line)),
  )

describe('the starter of the guide', () => {
  it('passes check as it is, by itself and with the machine', () => {
    expect(check(new Map([[PROCEDURE, STARTER]])).diagnostics).toEqual([])
    expect(check(new Map([[PROCEDURE, STARTER]]), MACHINE).diagnostics).toEqual([])
  })

  it('is walked to its end by its answers', () => {
    const { state, said } = byHand(STARTER).keys(...answersIn(ANSWERS))
    expect(said).toEqual([])
    expect(state.closed).toBe('NONE')
  })

  it('leaves the reading out where a burr is found', () => {
    const answers = answersIn(ANSWERS).slice(0, -4)
    const { state } = byHand(STARTER).keys(...answers, '2')
    expect([state.closed, state.readings]).toEqual(['NONE', {}])
  })

  it('tests the air in both places, oxygen first, and its witness comes last', () => {
    const asked = [...STARTER.matchAll(/^ {6}- id: (\w+)$/gm)].map((match) => match[1])
    const gases = ['oxygen', 'flammable', 'h2s']
    const places = ['breathing', 'inside']
    expect(asked.slice(-7)).toEqual([...places.flatMap((p) => gases.map((g) => `${g}_${p}`)), 'witness'])
  })

  it('puts every step but the briefing behind its gate', () => {
    const steps = STARTER.slice(STARTER.indexOf('- id: wiped')).split(/^ {2}- id: /m)
    for (const step of steps) expect(step).toContain('exposes: [start, rotation, pressure, bad_air]')
  })
})

describe('the lines of the guide', () => {
  it('are one for each line of the starter that an author changes, and all the code there is', () => {
    expect(all).toHaveLength(STARTER.split('\n').filter((line) => YOURS.test(line)).length)
    expect(GUIDE.match(/^```\w*$/gm)?.filter((one) => one !== '```')).toEqual([
      '```yours',
      '```slip',
      '```yours',
      '```slip',
      '```answers',
    ])
  })

  it('bring about the slips that it shows, told as it shows them, and nothing else', () => {
    expect(rendered(withMine(first))).toEqual([SLIPS[0]?.trimEnd()])
    expect(rendered(withMine(all))).toEqual([SLIPS[1]?.trimEnd()])
  })

  it('pass check once they are right, by themselves and as a job', () => {
    expect(rendered(DONE)).toEqual([])
    const { diagnostics, jobs } = check(new Map([[PROCEDURE, DONE]]), MACHINE)
    expect(diagnostics).toEqual([])
    expect(jobs).toContainEqual({ procedure: 'crank_end_check', machine: 'TC-401-1' })
  })
})

describe('the commands of the guide', () => {
  const folder = mkdtempSync(join(tmpdir(), 'guide-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  for (const name of ['examples', 'procedures'])
    cpSync(join(ROOT, name), join(folder, name), { recursive: true })
  mkdirSync(join(folder, 'mine'))
  writeFileSync(join(folder, 'mine/my-check.yaml'), DONE)
  writeFileSync(join(folder, 'mine/answers.txt'), ownAnswers())
  const commands = linesIn(fences(GUIDE, '')).filter((line) => line.startsWith('node dist/barover.mjs '))

  it('run as they stand, and end as it says', { timeout: 240_000 }, async () => {
    const ran = []
    for (const line of commands) ran.push(await barover(line.split(' ').slice(2), { cwd: folder }))
    expect(ran.map(({ code, err }) => [code, err])).toEqual(commands.map(() => [0, '']))
    expect(ran[0]?.out).toMatch(/NOT SEARCHED[^.]*\.[^.]*\.\n1 file checked, 0 errors, 0 warnings\.\n$/)
    expect(ran[1]?.out).toContain('Checked as a job on the machine TC-401-1: crank_end_check.\n')
    const safe = 'nobody is sent to a hazard whose gate is not fresh'
    expect([GUIDE, ran[1]?.out.replace(/\n {2}/g, ' ') ?? ''].map((t) => t.includes(safe))).toEqual([
      true,
      true,
    ])
    const end = /It ends with\s+`([^`]*)`/.exec(GUIDE)?.[1] ?? 'no end'
    expect(ran[2]?.out).toContain(end)
    expect(ran[2]?.out).toMatch(
      /^PRACTICE {2}log {3}\S+\nPRACTICE {2}in {4}\S+\nPRACTICE {2}check number of the log:\n(?:PRACTICE {4}(?:\w{8} ?){4}\n){2}/m,
    )
  })
})

/** The walk with the answers of the guide: what it prints, and what each question shows that was not shown before. */
function walked() {
  const walk = byHand(DONE)
  const { defs } = walk.engine
  const asked = new Set<string>()
  const answers = answersIn(ownAnswers())
  for (const answer of answers) {
    const { title, must, rows, ask } = promptView(defs, walk.state, walk.talk, STYLE)
    for (const text of [title, ...[...must, ...rows, ...ask].map((one) => one.text)]) asked.add(text)
    walk.keys(answer)
  }
  return { walk, printed: printedBy(walk), asked: [...asked].join('\n'), keyed: answers.join('\n').length }
}

describe('the answers of the guide', () => {
  it('walk the procedure to its end, one answer to each question', () => {
    const { walk } = walked()
    expect(walk.said).toEqual([])
    expect(walk.state.closed).toBe('NONE')
    expect(Object.keys(walk.state.readings)).toEqual(['size.there'])
  })

  it('are doubted where the guide says so', () => {
    const slip = /a slip: `([\d.]+)` is doubted/.exec(GUIDE)?.[1] ?? ''
    const walk = byHand(DONE)
    walk.keys(...answersIn(ownAnswers()).slice(0, -2), slip)
    expect(walk.prompt.kind).toBe('doubt')
  })

  it('are sent back in the words that the guide looks for', () => {
    const told = /Where it says `(\w+)` or `([^`]+)` instead/.exec(GUIDE)?.slice(1)
    const said = [['9.0521'], ['9.5021', '9.5031']].map((figures) => {
      const walk = byHand(DONE)
      walk.keys(...answersIn(ownAnswers()).slice(0, -2), ...figures)
      return printedBy(walk).split('\n').slice(-6).join('\n')
    })
    expect(told).toHaveLength(2)
    for (const [n, words] of (told ?? []).entries()) expect(said[n]).toContain(words)
  })
})

const READ = 200
const TYPED = 150
const COMMAND = 10 / 60
/** To find the next line that ends in "yours" and put the cursor into it. */
const FIND = 3 / 60

/** To think of words of one's own, in each of the two chapters that ask for them. */
const THINK = 0.5

/** Everything between two spaces, signs that stand alone too: they are looked at as well. */
function wordsIn(text: string): number {
  return text.split(/\s+/).filter((word) => word !== '').length
}

/** What the lesson sends the reader to in the starter: all but the evidence from the second line to the last but one. */
const STARTER_READ =
  STARTER.slice(0, STARTER.indexOf('      - id: try_start')) +
  STARTER.slice(STARTER.indexOf('      - id: witness'))

function minutes({ title, body }: Chapter): number {
  const changed = linesIn([...fences(body, 'yours'), ...fences(body, 'answers')])
  const slips = fences(body, 'slip')
  const prose = body.replace(FENCE, (_all, word, inside) => (word === 'slip' ? inside : ''))
  const lastDozen = () => walked().printed.split('\n').slice(-12).join('\n')
  const more = title.startsWith('1') ? STARTER_READ : title.startsWith('4') ? lastDozen() : ''
  const repaired = slips.length > 0 && title.startsWith('3') ? REPAIRED.length - SLIP.length : 0
  const typed = changed.join('\n').length + repaired
  // Each slip is told by a check, and checked again once it is right; a check says half a line when all is well.
  const commands = linesIn(fences(body, '')).length + slips.length
  const readWords = wordsIn(prose) + wordsIn(more) + 8 * commands
  const thought = fences(body, 'yours').length > 0 ? THINK : 0
  return readWords / READ + typed / TYPED + changed.length * FIND + commands * COMMAND + thought
}

describe('the minutes of the guide', () => {
  it('are those at its chapters, to the half minute above, and fifteen at most with the introduction', () => {
    expect(CHAPTERS).toHaveLength(4)
    for (const chapter of CHAPTERS) {
      const reckoned = minutes(chapter)
      expect(chapter.stated, `${chapter.title} takes ${reckoned.toFixed(2)}`).toBeGreaterThanOrEqual(reckoned)
      expect(chapter.stated - reckoned, chapter.title).toBeLessThan(0.8)
    }
    const stated = CHAPTERS.reduce((sum, one) => sum + one.stated, 0)
    expect(wordsIn(INTRODUCTION) / READ + stated).toBeLessThanOrEqual(15)
  })

  it('for a walk by hand are about those it says', () => {
    const { asked, printed, keyed } = walked()
    const { length: count } = answersIn(ownAnswers())
    // A question is read, answered and seen to be taken.
    const reckoned = (wordsIn(asked) + wordsIn(printed)) / READ + keyed / TYPED + count * FIND
    const words = ['six', 'seven', 'eight', 'nine', 'ten']
    const stated = words.indexOf(/yourself: about (\w+) minutes/.exec(GUIDE)?.[1] ?? '') + 6
    expect(Math.abs(stated - reckoned)).toBeLessThan(1)
  })
})
