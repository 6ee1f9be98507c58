// Measuring and recording: a figure that was keyed, against what the instrument showed for it.
import { asKind, instrumentById, stepById } from '../job/definitions.ts'
import type { Entry, ReadingAt } from '../job/entries.ts'
import { checkBefore, isSetCheck } from '../job/off-standard.ts'
import { NOISE } from '../job/plausible.ts'
import { gaugeById } from '../job/seats.ts'
import { setCheckOf } from '../job/set-check.ts'
import { alarmLesson } from './lesson-gate.ts'
import { type Lesson, right, type Scene, wrong } from './marks.ts'

type Corrected = Extract<Entry, { type: 'reading.corrected' }>
/** As it was keyed, whichever entry it was taken by. */
type Keyed = Pick<Extract<Entry, { type: 'reading.taken' }>, 'instrument' | 'typed' | 'value' | 'unit'>

/** One that is doubted, or keyed late, is nothing yet: it is marked where it is taken, and never where it is dropped. */
export function waitingLesson(scene: Scene): Lesson {
  if (scene.asked?.alarm === true) return alarmLesson(scene)
  return {
    marks: [],
    isUnsafe: false,
    says: ['Not marked: nothing is taken yet. It is marked where it is kept.'],
  }
}

/** A figure put in the place of another: what was shown for that one, or what was measured anew; any other is invented. */
export function correctionLesson(scene: Scene, entry: Corrected, isAnew: boolean): Lesson {
  const { asked } = scene
  if (isAnew || asked?.alarm === true || (asked !== null && asked.figure === null))
    return readingLesson(scene, entry)
  const keyed = `${entry.typed.trim()} ${entry.unit}`
  if (asked === null)
    return invented(`Wrong: ${keyed} is invented: nothing was measured for it, before or now. ${MEASURE}`)
  if (entry.value !== Number(asked.figure))
    return invented(
      `Wrong: ${keyed} is invented: ${asked.instrument} showed ${asked.figure} there, and nothing was measured since. ${MEASURE}`,
    )
  return { marks: [right('recording')], isUnsafe: false, says: [`Right: as ${asked.instrument} showed it.`] }
}

const MEASURE = 'The word measure is heard where correct asks for the figure.'

/** No measurement, and no record of one. */
function invented(says: string): Lesson {
  return {
    marks: [wrong('measuring'), wrong('recording')],
    isUnsafe: false,
    isUnmeasured: true,
    says: [says],
  }
}

/** A reading as it is taken, or kept after it waited. */
export function takenLesson(scene: Scene, entry: ReadingAt): Lesson {
  const lesson = readingLesson(scene, entry)
  const off = measuredOnWith(scene, entry)
  if (off === null || lesson.isUnsafe) return lesson
  const [first = '', ...more] = lesson.says
  return {
    ...lesson,
    marks: [wrong('measuring'), ...lesson.marks.filter(({ skill }) => skill !== 'measuring')],
    says: /^right/i.test(first) ? [off] : [first, ...more, off],
  }
}

/**
 * The first size measured with a gauge that its check before has shown to be off: nothing of it can be judged, and it costs that one mark.
 * Null for any other, and for all that come after.
 */
function measuredOnWith({ defs, state }: Scene, { step, instrument }: ReadingAt): string | null {
  const placed = stepById(defs, step)
  const check = isSetCheck(placed) ? undefined : checkBefore(defs, placed)
  const gauge = gaugeById(defs, instrument)
  if (check === undefined || gauge === null) return null
  const read = setCheckOf(state, asKind(check, 'read'), gauge)
  if (read === null || Math.abs(read.deviationM) <= read.allowedM + NOISE) return null
  const isBracketed = (id: string) => {
    const one = stepById(defs, id)
    return !isSetCheck(one) && checkBefore(defs, one)?.id === check.id
  }
  const others = Object.values(state.readings)
    .flat()
    .filter((one) => one.instrument === instrument && isBracketed(one.step))
  return others.length > 1
    ? null
    : `Wrong: sheet ${check.number} showed ${instrument} further off its standard than the ${gauge.set_check.within.text} it may be. Nothing that it measures can be judged: HOLD. The word instrument puts it aside before anything is measured with it.`
}

export function readingLesson(scene: Scene, entry: Keyed): Lesson {
  const { asked, defs } = scene
  const by = instrumentById(defs, entry.instrument)
  // What it shows is in its own unit, whichever was keyed.
  const unit = by === undefined || by.kind === 'gas_meter' ? entry.unit : by.unit
  if (asked === null)
    return {
      marks: [wrong('measuring')],
      isUnsafe: false,
      isUnmeasured: true,
      says: [
        `Wrong: nothing was measured for ${entry.typed.trim()} ${entry.unit}. The word correct takes it back: key measure in it, and then what ${entry.instrument} shows. Each repeat is measured anew.`,
      ],
    }
  if (asked.alarm) return alarmLesson(scene)
  if (asked.figure === null && asked.instrument === entry.instrument)
    return {
      marks: [wrong('measuring')],
      isUnsafe: false,
      says: [
        `Wrong: ${entry.instrument} cannot show what is there, so ${entry.typed.trim()} ${entry.unit} is no reading of it. One whose range has it is taken.`,
      ],
    }
  if (asked.figure === null || asked.instrument !== entry.instrument)
    return {
      marks: [wrong('measuring')],
      isUnsafe: false,
      says: [
        `Wrong: it was measured with ${asked.instrument ?? 'nothing'}, and stands for ${entry.instrument}.`,
      ],
    }
  const isAsShown = entry.value === Number(asked.figure)
  const isQuick = asked.manner === 'quick'
  const says = [
    ...(isQuick
      ? [
          'Wrong: it was taken as it lies. The sheet says how the instrument is held, and without that the figure is off.',
        ]
      : []),
    ...(isAsShown
      ? []
      : [`Wrong: ${entry.instrument} shows ${asked.figure} ${unit}, and ${entry.typed.trim()} was keyed.`]),
  ]
  return {
    marks: [
      isQuick ? wrong('measuring') : right('measuring'),
      isAsShown ? right('recording') : wrong('recording'),
    ],
    isUnsafe: false,
    says: says.length === 0 ? [`Right: as ${entry.instrument} shows it.`] : says,
  }
}
