// Whose initials are keyed, and who else is on the machine. Told from the crew file, the prompt and the other jobs that were seen; the
// program sees nobody who works there without a job.

import type { Definitions } from '../job/definitions.ts'
import { otherLines } from '../job/elsewhere-words.ts'
import { mayWitness } from '../job/evidence-words.ts'
import { next, type Prompt } from '../job/next.ts'
import { pointOf } from '../job/point.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { atHandLines } from './at-hand.ts'
import { peopleText } from './may-sign.ts'
import { practisedAlone } from './plain-asked.ts'
import { peopleLine } from './where.ts'

const KEY = '(?:use|key|type|put(?: in| down)?|enter|give|write|sign(?: with| by| in)?|need|take|go)'
const OWN =
  "(?:my|our|his|her|their|the|somebody(?: else)?'?s|someone(?: else)?'?s|\\w{2}'s|\\w+'s|my \\w+'s|the \\w+'s|which|whose|what|own)"
const INITIALS = [
  `^(?:do|should|must|can|may|am|could|would|is it|does) (?:i|we|he|she|they|you|the \\w+|my \\w+)?(?: (?:to|have to|just|also|need to|still|now))* ?${KEY}(?: (?:with|in|to))?(?: ${OWN})*(?: own)? (?:initials?|name|signature|pin)\\b.*`,
  "^(?:with |by |is it |are (?:they|these|those|it) )?(?:whose|which|what|who's) (?:initials?|name|signature|pin)(?! (?:mean|stand for)\\b)\\b.*",
  '^(?:with |is it |are (?:they|these|it) )?(?:my|his|her|their)(?: own)? initials?(?: (?:here|now|or .*))?$',
  `^(?:can|may|should|must|do|could) (?:i|we|somebody|someone|he|she|my \\w+)(?: else)? sign (?:for|instead of|in the name of|in place of) (?:him|her|them|me|us|my \\w+|the \\w+|another \\w+|somebody|someone|others?|\\w{2})\\b.*`,
  `^(?:can|may|could) (?:somebody|someone|anybody|another \\w+|my \\w+|the \\w+)(?: else)? ${KEY} (?:(?:it|this|that) for me|my (?:own )?(?:pin|initials))\\b.*`,
]
const SOME =
  '(?:anybody|anyone|any one|any body|somebody|someone|others|other (?:people|crews?|jobs?|mechanics?)|people|another (?:crew|job|team|gang|man|person|mechanic)|any ?(?:other|more) (?:people|jobs?|crews?|work|mechanics?|men))'
const MACHINE = '(?:machine|compressor|unit|cylinders?|set|engine|throws?|skid|frame|line|package|site)'
const AT = `(?:(?:on|at|around|with|near|of|to) )*(?:(?:this|the|our|that|same|any|other) )*(?:${MACHINE}|it|here|one|job)`
const AT_MACHINE = `(?:(?:on|at|around|with|near|of|to) )+(?:(?:this|the|our|that|same|any|other) )*${MACHINE}`
const BUSY =
  '(?:working|at work|busy|open|running|signed on|doing (?:something|anything|work)|locked (?:on|out)|a job)'
const ANYBODY = [
  // Of others the machine need not be said; of anybody it must, as what stands inside is another question.
  `^(?:(?:is|are|was) )?(?:there )?(?:${SOME} else|others|other \\w+|another \\w+|any ?(?:other|more) \\w+)(?: (?:also|still|now|already))*(?: ${BUSY})?(?: ${AT})?(?: (?:too|now|today|besides (?:me|us)))*$`,
  `^(?:(?:is|are|was) )?(?:there )?${SOME}(?: (?:also|still|now|already))*(?: ${BUSY})?(?: (?:also|too))? ${AT_MACHINE}(?: (?:too|now|today|besides (?:me|us)))*$`,
  `^who else (?:is|works|has|'s)?(?: (?:also|now|still|a))*(?: (?:job|lock|locks))?(?: ${BUSY})?(?: ${AT_MACHINE})$`,
  `^(?:does|do|has|have|could|might|will) ${SOME} else (?:work|works|worked|have|has|got|be)\\b.*`,
  `^(?:am i|are we) (?:really )?the only (?:ones?|people|crew|job|man|team)(?: ${AT})?(?: (?:now|today))*$`,
  `^(?:any|are there|is there) (?:other )?jobs?(?: open| running)? ${AT_MACHINE}$`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [INITIALS_ASKED, ANYBODY_ASKED] = [compiled(INITIALS), compiled(ANYBODY)]

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function othersAskedLines(
  defs: Definitions,
  state: State,
  text: string,
  now: Instant,
): string[] | null {
  const is = (patterns: readonly RegExp[]) => patterns.some((one) => one.test(text))
  if (is(ANYBODY_ASKED)) return anybodyLines(defs, state, now)
  return is(INITIALS_ASKED) && !/\b(?:mean|find|stand for)\b/.test(text) ? initialsLines(defs, state) : null
}

function anybodyLines(defs: Definitions, state: State, now: Instant): string[] {
  const others = otherLines(state)
  return [
    ...(others.length === 0
      ? ['By the folder of this job, as last looked at: no other job is open on this machine.']
      : others),
    peopleLine(state),
    'Barover knows of jobs in the same folder and of nobody else. Tags, locks, permits and the control room tell; count heads at the place.',
    ...atHandLines(defs, state, now),
  ]
}

const EACH_OWN = 'Everybody keys their own initials and their own PIN, and nobody those of another.'

function initialsLines(defs: Definitions, state: State): string[] {
  return [EACH_OWN, ...hereLines(defs, state, next(defs, state)), ...practisedAlone(defs, state)]
}

function hereLines(defs: Definitions, state: State, prompt: Prompt): string[] {
  const keyed = state.doer === null ? 'whoever is at the keyboard' : `${state.doer}, who is at the keyboard`
  switch (prompt.kind) {
    case 'sign-on':
      return [
        'Here: those of whoever is at the keyboard, as the crew file has them. Others come on with sign on.',
      ]
    case 'evidence':
      return evidenceLines(defs, state, prompt, keyed)
    case 'point':
    case 'review':
      return [`Here: those of a ${list(pointOf(prompt.step)?.roles ?? [], 'or')} who did none of this.`]
    case 'decide':
      return ['Asked after the decision: those of a lead who took none of the readings and did not key them.']
    case 'findings':
      return ['Asked after the choice: those of a lead who did none of that work.']
    case 'countersign':
      return ['Here: those of the lead who said it by radio.']
    case 'sheet-sign':
      return [
        prompt.as === 'keyed'
          ? 'Here: those of who keyed the sheet.'
          : 'Here: those of the lead who compared it.',
      ]
    default:
      return [`Here no initials are asked: what is keyed goes on record under ${keyed}.`]
  }
}

function evidenceLines(
  defs: Definitions,
  state: State,
  { gate, item }: Extract<Prompt, { kind: 'evidence' }>,
  keyed: string,
): string[] {
  const { evidence, person } = item
  if (evidence.kind === 'witness') {
    const fits = mayWitness(defs, state, gate, evidence)
    return [
      'Here: those of the witness, keyed by the witness, who gave and keyed none of it and looked.',
      ...(fits.length === 0 ? ['Nobody of the crew file fits it now.'] : [`May: ${peopleText(fits)}.`]),
    ]
  }
  if ((evidence.kind === 'locks' || evidence.kind === 'numbers') && evidence.taken_off !== undefined)
    return ['Here: behind the number, those of whoever took it off by their own hand.']
  if (person !== null)
    return [`Here no initials are asked: the number of ${person}'s own, keyed under ${keyed}.`]
  const what = evidence.kind === 'locks' || evidence.kind === 'numbers' ? 'the number is, ' : ''
  return [`Here no initials are asked: ${what}and it goes on record under ${keyed}, whoever read it out.`]
}
