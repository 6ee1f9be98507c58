// The sheet of a practice session within a report.
import { z } from 'zod'
import { SKILLS } from '../practice/marks.ts'
import { list, maybe, whole, words, yes } from './schema-words.ts'

export const practiceSchema = z.strictObject({
  who: maybe('Initials of whoever practised: the first who signed on; null: nobody did.'),
  seed: whole('Number that the hidden machine was drawn by.'),
  level: whole('How hard it is to see what is wrong, 1 to 5.'),
  edition: maybe('Edition of the list of faults it was opened with; null: none is on record.'),
  isSameMachine: yes('true: today the seed, or the scenario, still brings that machine.'),
  scenario: maybe('Title of the scenario of an instructor; null: it was drawn.'),
  safety: z.enum(['passed', 'failed', 'not reached']).meta({
    description: 'Apart from all else: failed by one line of a hold point on false or missing evidence.',
  }),
  unsafe: list(
    z.strictObject({ seq: whole('Entry by which it was failed.'), says: words('Why, in a sentence.') }),
    'What failed it.',
  ),
  scores: list(
    z.strictObject({
      skill: z.enum(SKILLS).meta({ description: 'What was to be shown.' }),
      right: whole('Marks that were right.'),
      of: whole('Marks in all; 0: it did not come up.'),
    }),
    'Score by skill.',
  ),
  hints: whole('Hints asked for, each counted as one thing not known.'),
  isOver: yes('true: what was hidden was named, and what came of it counts.'),
  isPassed: yes(
    'true: it is over, safety passed, each skill that came up was enough, and what was hidden was named, all of it and nothing else.',
  ),
  hidden: list(
    z.strictObject({
      name: words('What was wrong, as a mechanic would say it.'),
      isNamed: yes('true: it was named.'),
    }),
    'What was hidden; empty also before anything was named.',
  ),
  expected: list(
    z.strictObject({ says: words('What the instructor expected.'), isFound: yes('true: it was found.') }),
    'Of a scenario. Nothing is graded by it.',
  ),
  next: words('What to practise next.'),
  again: words('How the same machine comes back, or that none does.'),
})
