// The body of a report: what was read, hold points, who signed, with what, by which limits, what was decided and changed.
import { percentText } from '../units/index.ts'
import { durationText } from './duration.ts'
import { type Column, line, lines, type PaperLine, type Piece, type Section, table, timeOf } from './paper.ts'
import { plotPieces } from './paper-front.ts'
import type { Report } from './schema.ts'

const left = (head: string, wide: number): Column => ({ head, wide })
const right = (head: string, wide: number): Column => ({ head, wide, right: true })

/** A section says in a sentence that there is nothing in it. */
function section(id: string, title: string, pieces: readonly Piece[], none: string): Section {
  return { id, title, pieces: pieces.length === 0 ? [lines(line(none))] : pieces }
}

export function readingsSection(report: Report): Section {
  return section(
    'readings',
    'Readings',
    [
      ...report.readings.flatMap(({ sketches }) =>
        sketches.map((one) => ({ is: 'sketch', ...one }) as const),
      ),
      ...plotPieces(report.plots, ['bore-profile', 'gaps', 'pocket', 'pv']),
      ...table(
        'Readings, by step and place, in the order of the job',
        [
          left('no.', 1),
          left('what and where', 5),
          right('counts as', 2.3),
          left('read', 3.6),
          right('spread', 1.7),
          left('with', 1.2),
          left('by, at', 2),
        ],
        report.readings.flatMap(({ stage, places }) =>
          places.map((place) => [
            place.number,
            stagedName(place.name, stage),
            place.value?.text ?? `none: ${place.why ?? 'not told'}`,
            readText(place),
            place.spread ?? '',
            [...new Set(place.readings.map(({ instrument }) => instrument))].join(', '),
            byText(place.readings, report),
          ]),
        ),
      ),
    ],
    'Nothing was read.',
  )
}

type Place = Report['readings'][number]['places'][number]

/** Most titles say the stage themselves. */
function stagedName(name: string, stage: string | null): string {
  const said = stage?.replaceAll('_', ' ') ?? ''
  return name.toLowerCase().includes(said) ? name : `${name} (${said})`
}

function readText({ readings }: Place): string {
  const each = readings.map(({ value, counts, kept, paper }) => {
    const more = counts === 'yes' ? '' : ` (${counts})`
    const beside = paper === undefined ? '' : ` (${paper})`
    return `${value.shown}${more}${beside}${kept === null ? '' : ` (doubted, kept: ${kept})`}`
  })
  const units = [...new Set(readings.map(({ value }) => value.text.slice(value.shown.length + 1)))].join(', ')
  if (each.length === 0) return '-'
  return `${each.join('; ')} [${units}]`
}

/** Of what stands: when it was read, and when one of it was put right, by whom. Where nothing does, of all there ever was. */
function byText(readings: Place['readings'], report: Report): string {
  const standing = readings.filter(({ counts }) => counts === 'yes')
  const told = standing.length === 0 ? readings : standing
  const read = told.filter(({ corrects }) => corrects === null)
  const [first] = read
  const who = [...new Set(read.map(({ by }) => by ?? 'nobody'))].join(', ')
  return [
    ...(first === undefined ? [] : [`${who} ${timeOf(first.at, report)}`]),
    ...told
      .filter(({ corrects }) => corrects !== null)
      .map(({ by, at }) => `corrected ${by ?? 'nobody'} ${timeOf(at, report)}`),
  ].join('; ')
}

export function gatesSection(report: Report): Section {
  return section(
    'gates',
    'Hold points',
    report.gates.flatMap((gate): Piece[] => [
      lines(
        line(`${gate.title}: ${gate.status}`, gate.status === 'fallen' ? 'caution' : 'strong', {
          margin: gate.number,
        }),
        line(`  holds back: ${gate.holds.join('; ')}`),
      ),
      ...gate.openings.flatMap(({ seq, at, by, evidence }) =>
        table(
          `${gate.number} complete at ${timeOf(at, report)}, ${by ?? 'nobody'}, entry ${seq}`,
          [
            left('asked', 4.6),
            left('shown', 3),
            left('with', 1.2),
            left('by', 1.7),
            left('at', 1.7),
            right('age then', 1.6),
            right('stands for', 1.7),
          ],
          evidence.map((one) => [
            one.item,
            one.shown,
            one.instrument ?? '',
            one.person === null ? (one.by ?? '') : `signed ${one.person}`,
            timeOf(one.at, report),
            one.age === null ? 'not known' : durationText(one.age),
            one.life === null ? '' : durationText(one.life),
          ]),
        ),
      ),
      ...(gate.falls.length + gate.failed.length === 0
        ? []
        : [
            lines(
              ...gate.failed.map(
                ({ at, item, shown, why }): PaperLine =>
                  line(`  ${timeOf(at, report)}  no evidence: ${item}  ${shown}: ${why}`, 'caution'),
              ),
              ...gate.falls.map(
                ({ at, lapsed, why, void: fallen }): PaperLine =>
                  line(
                    `  ${timeOf(at, report)}  fell: ${why}${lapsed === undefined ? '' : `, lapsed ${timeOf(lapsed, report)}, noted ${timeOf(at, report)}`}${fallen.length === 0 ? '' : `; void: ${fallen.join(', ')}`}`,
                    'caution',
                  ),
              ),
            ),
          ]),
    ]),
    'This job asks for no hold point.',
  )
}

export function peopleSection(report: Report): Section {
  return section(
    'people',
    'People and signatures',
    [
      ...table(
        'People',
        [
          left('initials', 1.5),
          left('name', 5),
          left('role', 2),
          left('signed on', 2),
          right('signatures', 2),
        ],
        report.people.map(({ id, name, role, onJob, since, signed }) => [
          id,
          name,
          role,
          onJob ? 'yes' : since ? 'no, signed after the close' : 'no',
          String(signed),
        ]),
      ),
      ...table(
        'Signatures',
        [
          right('entry', 1),
          left('at', 2),
          left('who', 1),
          left('how', 1.5),
          left('keyed by', 1.5),
          left('what', 6),
        ],
        report.signatures.map(({ seq, at, person, how, keyedBy, what }) => [
          String(seq),
          timeOf(at, report),
          person,
          how,
          keyedBy ?? '',
          what,
        ]),
      ),
    ],
    'Nobody signed.',
  )
}

export function instrumentsSection({ instruments }: Report): Section {
  return section(
    'instruments',
    'Instruments',
    table(
      'Measured with, or shown by',
      [
        left('id', 1),
        left('what', 4),
        left('calibrated until', 2),
        left('certificate', 2.6),
        left('error', 5),
        right('readings', 1.5),
        right('shown', 1.2),
      ],
      instruments.map((one) => [
        one.id,
        one.doubted === null ? one.title : `${one.title}; OUT OF CALIBRATION: ${one.doubted}`,
        one.due ?? 'not known',
        one.certificate ?? 'not known',
        one.error,
        String(one.readings),
        String(one.evidence),
      ]),
    ),
    'Nothing was measured with.',
  )
}

export function limitsSection({ limits, gasLimits }: Report): Section {
  return section(
    'limits',
    'Limits and their sources',
    [
      ...table(
        'What verdicts were held against',
        [
          left('step', 0.9),
          left('judged', 2.4),
          right('value', 2.6),
          right('U', 1.9),
          right('limit', 2.6),
          right('used', 2.6),
          left('word', 1.9),
          left('source', 4.8),
        ],
        limits.map((one) => [
          one.number,
          one.governs ? `${one.judged}, governs` : one.judged,
          withUnit(one.value?.text ?? '-'),
          withUnit(one.U?.text ?? '-'),
          `${one.bound} ${withUnit(one.limit.text)}`,
          usedText(one),
          one.word,
          [
            `${one.from === 'machine' ? 'machine record' : 'FALLBACK'}: ${one.source}`,
            ...(one.rule === null ? [] : [one.rule]),
            `approved ${one.approvedBy}, since ${one.since}`,
          ].join('; '),
        ]),
      ),
      ...table(
        'Gas limits asked at hold points',
        [left('limit', 6), left('source', 4), left('approved by', 2.5)],
        gasLimits.map(({ says, source, approvedBy }) => [says, source, approvedBy]),
      ),
    ],
    'No limit was judged against.',
  )
}

/** A figure and its unit are not parted over two lines. */
const withUnit = (text: string) => text.replaceAll(' ', '\u00a0')

/** `75 %, watched from 70 %`: without the share to watch from nobody can tell MONITOR from ACCEPT by the figures. */
function usedText({ used, countedFrom, watchedFrom }: Report['limits'][number]): string {
  return [
    used === null ? '-' : percentText(used),
    ...(countedFrom === null ? [] : [`counted from ${withUnit(countedFrom.text)}`]),
    ...(watchedFrom === null ? [] : [`watched from ${percentText(watchedFrom)}`]),
  ].join(', ')
}

export function decisionsSection(report: Report): Section {
  const { findings, decisions, permits } = report
  return section(
    'decisions',
    'Findings and decisions',
    [
      ...table(
        'What was seen',
        [left('step', 0.9), left('looked at', 3.5), left('seen', 5), left('note', 3), left('by, at', 2.2)],
        findings.map(({ number, title, found, note, isFinding, by, at }) => [
          number,
          title,
          isFinding ? `DOES NOT CONFORM: ${found}` : found,
          note ?? '',
          `${by ?? 'nobody'} ${timeOf(at, report)}`,
        ]),
      ),
      ...table(
        'What a lead decided',
        [
          left('no.', 1.2),
          left('about', 3.5),
          left('word', 2.5),
          left('decided', 2),
          left('by', 1.8),
          left('why', 5),
        ],
        decisions.map((one) => [
          one.name ?? '',
          one.about,
          one.word,
          `${one.open ? 'OPEN ' : ''}${one.choice ?? ''}`.trim(),
          one.radio === null
            ? (one.person ?? '')
            : `${one.person} BY RADIO, heard ${one.radio}, ${one.countersigned ? 'countersigned' : 'NOT YET COUNTERSIGNED'}`,
          [one.why, one.terms].filter((part) => part !== null).join('; '),
        ]),
      ),
      ...(permits.length === 0
        ? []
        : [lines(line('Deviation permits', 'strong'), ...permits.map((one) => line(`  ${one}`)))]),
    ],
    'Nothing was looked at from a list, and nothing was to be decided.',
  )
}

export function correctionsSection(report: Report): Section {
  return section(
    'corrections',
    'Corrections',
    table(
      'What was put right or taken back: the old and the new',
      [
        right('entry', 1),
        left('by, at', 2),
        left('what', 4),
        left('was', 3.2),
        left('is', 3.2),
        left('why, and what fell with it', 4.5),
      ],
      report.corrections.map(({ seq, at, by, what, was, now, why, voids }) => [
        String(seq),
        `${by ?? 'nobody'} ${timeOf(at, report)}`,
        what,
        was ?? '',
        now ?? '',
        voids.length === 0 ? why : `${why}; void with it: ${voids.join('; ')}`,
      ]),
    ),
    'Nothing was corrected or taken back.',
  )
}

export function filesSection({ files }: Report): Section {
  return section(
    'files',
    'Attached files',
    table(
      'Attached files: evidence for nothing',
      [
        right('entry', 1),
        left('name', 3),
        left('shows', 4),
        right('bytes', 1.5),
        left('is', 1.5),
        left('SHA-256', 5),
      ],
      files.map((one) => [String(one.seq), one.name, one.caption, String(one.size), one.is, one.sha256]),
    ),
    'None.',
  )
}

export function logSection({ log }: Report): Section {
  return {
    id: 'log',
    title: 'The whole log, as the sheet has it',
    pieces: [
      lines(
        ...log.flatMap(({ seq, number, told, right: who }): PaperLine[] =>
          told.map((text, i) =>
            i === 0
              ? line(text, 'plain', { margin: number ?? '', right: `${who}  #${seq}`.trim(), columns: true })
              : line(text, 'plain', { columns: true }),
          ),
        ),
      ),
    ],
  }
}
