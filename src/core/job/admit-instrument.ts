// An instrument found out of calibration: everything it read falls, with what rests on it, also after the job was closed.
// It takes away and never gives, so nobody's leave is asked for it and STOP does not keep it out.
import { ok, type Result, refuse } from '../lib/result.ts'
import { temperaturesFor } from './body-temperatures.ts'
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { notAsked, reason, words } from './refusals.ts'
import { signer } from './signature.ts'
import { type Pending, type State, stands } from './state.ts'
import { voidMeasuredWith } from './voiding.ts'
import { wouldVoid } from './voids.ts'

type Doubting = Extract<Input, { do: 'doubt-instrument' }>

/** Seqs of what the instrument read and still stands or waits to be settled, gas tests included; and of which steps. */
export function readBy(state: State, instrument: string): { seqs: number[]; steps: string[] } {
  const waiting = [state.doubt, state.late].filter((p): p is Pending & { why: string } => p !== null)
  const taken = [...Object.values(state.readings).flat().filter(stands), ...waiting]
  const readings = taken.filter((r) => r.instrument === instrument)
  const tests = Object.values(state.gates).flatMap((gate) =>
    Object.values(gate.given).filter((g) => g.instrument === instrument),
  )
  return {
    seqs: [...readings, ...tests].map((r) => r.seq).sort((a, b) => a - b),
    steps: [...new Set(readings.map((r) => r.step))],
  }
}

export function admitDoubtedInstrument(
  defs: Definitions,
  state: State,
  input: Doubting,
): Result<readonly Body[]> {
  if (state.doer === null) return notAsked()
  const doubted = doubtedBody(defs, state, input)
  if (!doubted.ok) return doubted
  const gates = voidMeasuredWith(defs, state, input.instrument, doubted.value.why)
  return ok([doubted.value, ...gates])
}

/** The one thing that may still be added to a closed job. Somebody of the crew signs for it; a trainee does not. */
export function admitDoubtAfterClose(
  defs: Definitions,
  state: State,
  input: Doubting,
): Result<readonly Body[]> {
  const who = signer(defs, state, { person: input.person ?? '', proved: input.proved ?? false })
  if (!who.ok) return who
  const { person, signed } = who.value
  if (person.role === 'trainee')
    return refuse('trainee', `${person.id} is a trainee: a mechanic or a lead signs for this.`)
  const doubted = doubtedBody(defs, state, input)
  return doubted.ok ? ok([{ ...doubted.value, person: person.id, signed }]) : doubted
}

function doubtedBody(
  defs: Definitions,
  state: State,
  input: Doubting,
): Result<Extract<Body, { type: 'instrument.doubted' }>> {
  const { instrument } = input
  if (!state.picked.includes(instrument))
    return refuse('not-picked', 'That instrument was not picked on this job: key the number of one that was.')
  if (state.doubted[instrument] !== undefined)
    return refuse('doubted', `${instrument} is down as out of calibration already.`)
  const why = reason(input.why, 'Why it is out of calibration')
  if (!why.ok) return why
  const says = words(input.says, 'Who says so')
  if (!says.ok) return says
  const { seqs, steps } = readBy(state, instrument)
  const warm = temperaturesFor(defs, state, instrument)
  return ok({
    type: 'instrument.doubted',
    instrument,
    why: why.value,
    says: says.value,
    readings: seqs,
    ...(warm.seqs.length === 0 ? {} : { temperatures: warm.seqs }),
    voids: wouldVoid(defs, state, ...new Set([...steps, ...warm.steps])),
  })
}
