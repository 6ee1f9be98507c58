// Measuring and recording: a figure that was keyed, against what the instrument showed for it.
import { instrumentById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { alarmLesson } from './lesson-gate.ts'
import { type Lesson, right, type Scene, wrong } from './marks.ts'

type Keyed = Extract<Entry, { type: 'reading.taken' | 'reading.doubted' | 'reading.late' }>

export function readingLesson(scene: Scene, entry: Keyed): Lesson {
  const { asked, defs } = scene
  const by = instrumentById(defs, entry.instrument)
  // What it shows is in its own unit, whichever was keyed.
  const unit = by === undefined || by.kind === 'gas_meter' ? entry.unit : by.unit
  if (asked === null)
    return {
      marks: [wrong('measuring')],
      isUnsafe: false,
      says: [
        `Wrong: nothing was measured for ${entry.typed.trim()} ${entry.unit}. Key measure, and then what ${entry.instrument} shows; each repeat is measured anew.`,
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
