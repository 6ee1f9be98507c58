// What is read, aloud or on a low terminal: no warning is lost, no PIN is said, and nothing is answered that was not up to be read.
import { of } from './mutant.ts'

export const ALOUD = [
  ...of('app/speech', 'app/reader', [
    {
      rule: 'A warning is said at once, whatever is being said.',
      find: '      cutOff()\n      warnings = [{ text }, ...again, ...warnings]',
      into: '      warnings = [...warnings, { text }]',
      in: 'app/speech',
      by: 'a warning cuts off what is being said, and is said at once',
    },
    {
      rule: 'A warning that another one cuts off is said again, whole.',
      find: 'const again = now?.warning === true ? [now.utterance] : []',
      into: 'const again: Utterance[] = []',
      by: 'are said one behind the other, the newest first, each to its end',
    },
    {
      rule: 'What is asked next does not cut off a warning.',
      find: 'if (now?.warning === false) cutOff()',
      into: 'cutOff()',
      by: 'STOP cuts off whatever is said, and what is asked waits until it was said',
    },
  ]),
  ...of('app/reader', 'app/reader', [
    {
      rule: 'A hazard that was cut off is said again at its step.',
      find: 'done: () => void heard.add(text),',
      into: 'done: () => undefined,',
      by: 'a figure is read back in place of the old prompt, then the next place is said without the hazard',
    },
    {
      rule: 'A fault in reading aloud ends the reading aloud, not the job.',
      find: '      } catch {',
      into: '      } catch (error) {\n        if (error !== null) throw error',
      by: 'a voice that throws ends the reading aloud and nothing else',
    },
  ]),
  ...of('ui/use-side', 'ui/use-side', [
    {
      rule: 'What is asked on several sides is not answered before the last of them was up.',
      find: "return line.trim() === '' ? 'turn' : 'unread'",
      into: "return line.trim() === '' ? 'turn' : null",
      by: 'the hazard is up first and whole, and nothing is answered before it was turned over',
    },
    {
      rule: 'Of a hold point, a plate or a signature nothing waits that was keyed before it was up.',
      file: 'core/talk/may-be-kept',
      find: '!KEPT.includes(prompt.kind) ||',
      into: '',
      in: 'core/talk/may-be-kept',
      by: 'is never kept at a hold point, before the plate is read, or where somebody signs',
    },
    {
      rule: 'Where people are called out, that is up before anything that can be read later.',
      file: 'core/sheet/live',
      find: "isUrgent: view.ask[0]?.tone === 'caution',",
      into: 'isUrgent: false,',
      in: 'core/sheet/live',
      by: 'what is to be done at once stands on a side that is up first',
    },
    {
      rule: 'No hazard is cut over the question: it stands there whole, or a line says which key shows it.',
      file: 'core/sheet/sides',
      find: 'left - Math.min(1, taken)) return pointer',
      into: 'left - Math.min(1, taken)) return hazard.slice(0, left)',
      in: 'core/sheet/live',
      by: 'what has no room at once is folded, and nothing of it is lost',
    },
  ]),
  ...of('core/aloud/of-entry', 'core/aloud/aloud', [
    {
      rule: 'STOP is a warning wherever it is said.',
      find: "  'stop.raised',\n",
      into: '',
      by: 'STOP, what fell and a failed gas test are warnings',
    },
    {
      rule: 'Figures keyed where a PIN could have been meant are not said.',
      find: 'return /^[\\d\\s]{4,}$/.test(entry.typed) ? texts(rows.slice(1)) : texts(rows)',
      into: 'return texts(rows)',
      by: 'figures keyed for the tag of the plate may be a PIN and are not said',
    },
    {
      rule: 'After what interrupts the work its hazard is told once more.',
      find: 'return INTERRUPTS.includes(entry.type) &&',
      into: 'return false &&',
      in: 'plain/plain',
      by: 'says the hazard again in the midst of a hold point where a figure failed',
    },
    {
      rule: 'Whoever is called out hears it at each question until they said that they are.',
      file: 'plain/tell',
      find: 'if (AT_ONCE.test(row.text)) say(textOf(row))',
      into: 'if (AT_ONCE.test(row.text)) onceEach([row])',
      in: 'plain/plain',
      by: 'lets time act when a line comes, before it is heard',
    },
  ]),
]
