// The load question: what holds it, what an opening has to clear, and what is never taken for granted.
import { of } from './mutant.ts'

const JUDGED = 'core/cycle/pocket-judge'
const WALKED = 'core/job/pocket-step'

export const POCKET = [
  ...of('core/cycle/pocket-judge', JUDGED, [
    {
      rule: 'Computed and measured driver load further apart than the site allows hold the load question.',
      find: 'if (!(apart <= agreement))',
      into: 'if (false)',
      by: 'hold where computed and measured load are apart by more than the site allows, and say by how much',
    },
    {
      rule: 'A power meter further off than the loads may be apart says nothing of their agreement.',
      find: 'if ((errors.loadW ?? 0) / measuredLoadW <= agreement) return null',
      into: 'return null',
      by: 'hold where the power meter is further off than the loads may be apart',
    },
    {
      rule: 'A driver load over its target only by less than the meter may be off is too close to call.',
      find: 'machine.measuredLoadW - (input.errors.loadW ?? 0) > targetW',
      into: 'machine.measuredLoadW > targetW',
      by: 'says nothing where the load is too close to the target to call, on either side of it',
    },
    {
      rule: 'No opening is recommended at which a check is out.',
      find: "return out.length > 0 ? hold(found, ...out) : { verdict: 'REWORK', holds: [], at: found }",
      into: "return { verdict: 'REWORK', holds: [], at: found }",
      by: 'hold what the shifted machine does not: a rod load that is only just inside its limit as read',
    },
    {
      rule: 'A measuring error that nobody stated holds the load question, unless the owner took that on himself.',
      find: 'return simpleAcceptance === null\n',
      into: 'return simpleAcceptance === undefined\n',
      by: 'an error that nobody stated: HOLD, or MONITOR where the owner recorded that it is not allowed for',
    },
    {
      rule: 'What is said beside a load that is low enough makes it MONITOR, never ACCEPT.',
      find: 'const isPlain = now.faults.length === 0 && !isUnguarded(input)',
      into: 'const isPlain = true',
      by: 'no limit of the pin on record',
    },
    {
      rule: 'A hand-wheel without a least step on record gets no setting named.',
      find: "return travel.step === null ? 'The least step that the hand-wheel is set to is not on record.' : null",
      into: 'return null',
      by: 'a hand-wheel without a least step names no setting that nobody can set',
    },
  ]),
  ...of('core/cycle/pocket-cases', JUDGED, [
    {
      rule: 'The error of the power meter counts on top of the measured load.',
      find: '(machine.measuredLoadW + (errors.loadW ?? 0)) / least.value',
      into: 'machine.measuredLoadW / least.value',
      by: 'counts the error of the power meter on top of the measured load',
    },
    {
      rule: 'The pocket may stand further open than it was read, by the error of its setting.',
      find: 'leastNow(moved.value, choice, errors.opening ?? 0)',
      into: 'leastNow(moved.value, choice, 0)',
      by: 'counts the error of the setting: the pocket may stand further open than it was read',
    },
    {
      rule: 'A setting is looked at with the pressures off by their errors too.',
      find: 'for (const shift of SHIFTS) {',
      into: 'for (const shift of SHIFTS.slice(0, 1)) {',
      by: 'hold what the shifted machine does not: a rod load that is only just inside its limit as read',
    },
  ]),
  ...of('core/cycle/setting-checks', JUDGED, [
    {
      rule: 'A pocket that leaves an end drawing nothing is no setting to run at.',
      find: "efficiency > 0 ? 'warn' : 'hold'",
      into: "'warn'",
      by: 'an end that draws nothing is no setting to run at',
    },
  ]),
  ...of('core/cycle/pocket-setting', JUDGED, [
    {
      rule: 'The setting of a hand-wheel is the first whole step that holds the target, never one less.',
      find: 'return before === undefined || isStepped ? first : closeIn(before, first, holds)',
      into: 'return isStepped ? (before ?? first) : closeIn(before ?? 0, first, holds)',
      by: 'turns that closed form asks for',
    },
  ]),
  ...of('core/job/pocket-setting-read', WALKED, [
    {
      rule: 'A pocket fitted that is not the one on record holds the load question.',
      find: 'return fitted === onRecord\n',
      into: 'return fitted !== null\n',
      by: 'two_position',
    },
    {
      rule: 'Hand-wheel and stem that tell different settings tell none.',
      find: 'if (apart <= step + (byWheel.u ?? 0) + (byStem.u ?? 0)) return byWheel',
      into: 'return byWheel',
      by: 'holds where wheel and stem tell different settings, and takes them where they tell the same',
    },
    {
      rule: 'A setting read outside the travel on record is none of this pocket.',
      find: 'if (!(opening >= -u && opening <= 1 + u))',
      into: 'if (false)',
      by: 'holds on a setting beyond the travel on record',
    },
  ]),
  ...of('core/job/values', WALKED, [
    {
      rule: 'A verdict on a pocket hangs on the findings it rests on.',
      find: '...optional, ...observed]',
      into: '...optional]',
      by: 'every step it rests on makes verdict, decision and order fall',
    },
  ]),
  ...of('core/proof/gaps', 'core/proof/pocket-gaps', [
    {
      rule: 'The proof takes away each finding that a judge rests on.',
      find: 'return [...unseen, ...unread]',
      into: 'return [...unread]',
      by: 'finds a judge that does not mind a finding left unseen',
    },
  ]),
  ...of('core/job/pocket-record', WALKED, [
    {
      rule: 'A cylinder of the compressor that is not listed holds the load question.',
      find: 'if (listed.length < whole.cylinders_in_all)',
      into: 'if (false)',
      by: 'a whole stage, or a whole section, holds',
    },
  ]),
]
