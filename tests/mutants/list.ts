// Every safety rule, one way to break it each, and the test that notices. `npm run mutants` tries them all.
import { ADOPT } from './adopt.ts'
import { ALOUD } from './aloud.ts'
import { ASKED_AND_ATTACHED } from './asked-and-attached.ts'
import { BLANK } from './blank.ts'
import { CHANGES } from './changes.ts'
import { DECISIONS } from './decisions.ts'
import { DESK } from './desk.ts'
import { ELSEWHERE } from './elsewhere.ts'
import { EVIDENCE } from './evidence.ts'
import { FALLING } from './falling.ts'
import { FINDINGS } from './findings.ts'
import { GAS_AND_GAUGES } from './gas-and-gauges.ts'
import { GATES } from './gates.ts'
import { HISTORY } from './history.ts'
import { JOURNAL } from './journal.ts'
import { JUDGING } from './judging.ts'
import { METROLOGY } from './metrology.ts'
import { OUTLIVED } from './outlived.ts'
import { OVER_TIME } from './over-time.ts'
import { PAPER } from './paper.ts'
import { PAPER_HELD } from './paper-held.ts'
import { PEOPLE } from './people.ts'
import { POCKET } from './pocket.ts'
import { POINTS } from './points.ts'
import { PRACTICE } from './practice.ts'
import { READINGS } from './readings.ts'
import { RELEASE } from './release.ts'
import { REPORT } from './report.ts'
import { REVIEW } from './review.ts'
import { SEARCH } from './search.ts'
import { STOP } from './stop.ts'
import { TAKE_IN } from './take-in.ts'

export { staleWhy, titlePattern } from './mutant.ts'

export const MUTANTS = [
  ...GATES,
  ...FALLING,
  ...OUTLIVED,
  ...GAS_AND_GAUGES,
  ...EVIDENCE,
  ...PEOPLE,
  ...POINTS,
  ...FINDINGS,
  ...OVER_TIME,
  ...STOP,
  ...RELEASE,
  ...READINGS,
  ...CHANGES,
  ...TAKE_IN,
  ...ADOPT,
  ...DECISIONS,
  ...JUDGING,
  ...POCKET,
  ...METROLOGY,
  ...JOURNAL,
  ...DESK,
  ...ELSEWHERE,
  ...ASKED_AND_ATTACHED,
  ...REVIEW,
  ...HISTORY,
  ...REPORT,
  ...BLANK,
  ...ALOUD,
  ...SEARCH,
  ...PAPER,
  ...PRACTICE,
  ...PAPER_HELD,
]
