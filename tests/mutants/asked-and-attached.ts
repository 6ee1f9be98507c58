// What is asked in plain words and what is attached: neither is ever an answer, and neither stands before what keeps people from harm.
import { of } from './mutant.ts'

export const ASKED_AND_ATTACHED = [
  ...of('core/talk/hear', 'core/talk/stated', [
    {
      rule: 'Words that tell of danger, keyed as a note or a reason, go on record and are answered at once.',
      find: '  if (danger !== null) {',
      into: "  if (danger !== null && line === '') {",
      by: ' is asked go on record and are answered',
    },
    {
      rule: 'A sentence keyed where a number is asked is answered, and opens and takes nothing.',
      find: '  if (stated !== null) return',
      into: "  if (stated !== null && line === '') return",
      by: 'is answered at ',
    },
  ]),
  ...of('core/talk/would-void', 'core/job/gate', [
    {
      rule: 'What would become void by taking evidence back stands in the question.',
      find: "= rehearsed(defs, state, { do: 'ask-again', step: question.step })",
      into: '= [] as readonly FallingAt[]',
      by: 'of words or a lock is that one item, asked again',
    },
  ]),
  ...of('core/talk/safety-lines', 'core/talk/safety-asked', [
    {
      rule: 'Of a hold point that is not complete it is said that nothing goes in.',
      find: "gates.some((gate) => gateState(state, gate.id).status !== 'open') ||",
      into: '',
      by: ' is told from the job',
    },
    {
      rule: 'Of a hold point whose time has run out it is said that nothing goes in, entry or none.',
      find: '(until !== undefined && !(now.ms < until))',
      into: 'until === Number.NaN',
      by: 'says of a hold point whose time has run out that nothing goes in, though no entry says so yet',
    },
    {
      rule: 'Whom to call is told before the plate was read too.',
      find: 'line.startsWith(CALL) || ',
      into: "line.startsWith('FIRST') && ",
      by: 'never holds back whom to call, and shows no tag before the plate was read',
    },
  ]),
  ...of('core/talk/told', 'core/talk/safety-asked', [
    {
      rule: 'A question of safety is told from the job before any paper is looked through.',
      find: 'if (safety !== null) return [...(depth ?? []), ...safetyLines(defs, state, safety, asked, now)]',
      into: 'if (safety === undefined) return safetyLines(defs, state, safety, asked, now)',
      by: ' is told from the job',
    },
  ]),
  ...of('core/talk/told', 'core/talk/roles-asked', [
    {
      rule: 'Until the plate was read no answer from the job tells its tag.',
      find: 'return state.machineNamed || lines === null',
      into: 'return lines !== undefined || lines === null',
      by: 'the tag is told by none before the plate was read',
    },
  ]),
  ...of('core/talk/last-asked', 'core/talk/asked-in-doubt', [
    {
      rule: 'No figure of an overhaul before is told by a question until the first of today is in.',
      find: 'standing(state, place.key).length === 0',
      into: 'known.length === 0',
      by: 'is told of no place before the first figure of today is in, so that no eye is led by it',
    },
  ]),
  ...of('core/talk/stop-lines', 'core/talk/asked-in-doubt', [
    {
      rule: 'Danger that is told under an open STOP is told that the job is stopped, and who may release it.',
      find: '  if (stop === null) return [...lines]',
      into: '  if (stop !== undefined) return [...lines]',
      by: 'the alarm is ringing',
    },
  ]),
  ...of('core/talk/told', 'core/talk/asked-in-doubt', [
    {
      rule: 'A figure asked for as a safe one is told with its limit, and that no record keeps a hand whole.',
      find: 'return [SEES_NOTHING, ...gas]',
      into: 'return [SEES_NOTHING]',
      by: 'what is a safe oxygen level',
    },
  ]),
  ...of('core/talk/time-asked', 'core/talk/roles-asked', [
    {
      rule: 'A time that cannot be told is no time that is left.',
      find: 'if (!(left > 0))',
      into: 'if (left <= 0)',
      by: 'what has lapsed is no time that is left',
    },
  ]),
  ...of('core/talk/answer-asked', 'core/talk/newcomer', [
    {
      rule: 'Where a gas is read, how much of it is allowed is told for that place and no other.',
      find: 'gas !== undefined && asksLimit(question)',
      into: 'gas === undefined && asksLimit(question)',
      by: 'how much oxygen is too little?',
    },
  ]),
  ...of('core/talk/may-sign', 'core/sheet/who-is-needed', [
    {
      rule: 'Nobody who measured or keyed is named as one who may decide.',
      find: "role === 'lead' && !asked.value.doers.has(id)",
      into: "role === 'lead'",
      by: 'leaves out a lead who measured or keys, and says so where nobody is left',
    },
  ]),
  ...of('core/job/evidence-words', 'core/sheet/who-and-now', [
    {
      rule: 'Nobody who did any of a hold point is named as one who may witness it.',
      file: 'core/job/evidence-words',
      find: ' && !didThis(state, gate, id)',
      into: '',
      by: 'is named at the witness by initials and name, and whoever did any of it is not',
    },
  ]),
  ...of('core/talk/may-sign', 'core/sheet/who-and-now', [
    {
      rule: 'Nobody who raised or called a STOP is named as one who may lift it.',
      find: ' && !barred.people.has(id)',
      into: '',
      by: 'of a STOP that a lead called is another lead, and where there is none the job is closed',
    },
  ]),
  ...of('core/talk/hear', 'core/talk/asked', [
    {
      rule: 'What may be a question goes on no record as words before it is asked about.',
      find: 'wordIn(line) !== null || mayBeAsked(question, line)',
      into: 'wordIn(line) !== null',
      by: 'may be a question: it is asked about, and goes on no record before',
    },
  ]),
  ...of('core/talk/asked', 'core/talk/asked', [
    {
      rule: 'A line that could be an answer at its prompt is never taken for a question.',
      find: 'return asked === null || couldAnswer(defs, state, prompt, line) ? null : asked',
      into: 'return asked',
      by: 'the tag of another machine is put on record, and that of this one opens the job, whatever they look like',
    },
    {
      rule: 'Trouble that is told without a question mark gets the answer that a question gets: come out.',
      find: '|| tellsOfHarm(text) || saysWhoIsThere(text)',
      into: '|| saysWhoIsThere(text)',
      by: 'at %s: %s',
      in: 'core/talk/newcomer',
    },
    {
      rule: 'What is keyed where a PIN is asked is never looked up.',
      find: "if (takes === 'secret') return null",
      into: "if (takes === 'secret' && line === '') return null",
      by: 'is never looked up, said or put into any input, whatever is keyed for it',
    },
    {
      rule: 'Where words are asked for, a line that begins with ask and asks nothing is those words.',
      find: "if (takes === 'words') {",
      into: "if (takes === 'words' && line === '') {",
      by: 'is the note',
    },
  ]),
  ...of('core/talk/hear', 'core/talk/reflex', [
    {
      rule: 'A word keyed out of habit, such as ok, is never taken for an answer.',
      find: 'given === null || !isOfGate(given)) return untaken(say(...reflex))',
      into: 'given === null || !isOfGate(given)) return { ...(given ?? hearAtPrompt(defs, state, prompt, line)), say: reflex }',
      by: 'changes nothing at any prompt of the whole example, and is answered',
    },
  ]),
  ...of('ui/early-keys', 'ui/early-keys', [
    {
      rule: 'A STOP that is keyed before there is a screen is a STOP.',
      find: 'some((line) => isStop(line))',
      into: "some((line) => line === '!')",
      by: 'are a STOP where one is among them, with its Enter or without',
    },
  ]),
  ...of('core/talk/hear', 'core/talk/asked', [
    {
      rule: 'A question is never taken as an answer, and goes on no record.',
      find: 'return isTold(line)',
      into: 'return asked !== null ? { ...hearAtPrompt(defs, state, prompt, line), say: answerTo(defs, state, asked, now) } : isTold(line)',
      by: 'a question is answered from the papers, and nothing else comes of it',
    },
    {
      rule: 'What is keyed when the question for a PIN fell is not looked up.',
      find: "const asked = secrecy === 'open' ? askedAt(defs, state, prompt, line) : null",
      into: 'const asked = askedAt(defs, state, prompt, line)',
      by: 'whose question fell under it is dropped unseen, and nothing is looked up then',
    },
    {
      rule: 'The words that a hold point asks for are its answer, whatever word they begin with.',
      find: 'if (answers(defs, state, prompt, line)) return',
      into: 'if (line === null) return',
      by: 'words that a hold point asks for are its answer, though they begin like a question',
    },
    {
      rule: 'A figure that is shown with a doubt is never taken by keying it there.',
      find: "say('Key 1, 2 or 3 first: nothing was taken. 2 is for keying the figure again in full.')",
      into: "input({ do: 'settle-doubt', choice: 'kept', why: 'it would fit' })",
      by: 'is shown, and nothing is taken',
      in: 'core/job/doubtful',
    },
  ]),
  ...of('core/talk/hear', 'core/talk/hear', [
    {
      rule: 'A word keyed alone where words are asked for goes on no record before it is asked about.',
      find: "takes === 'words' && !isBack(line)",
      into: "takes === 'secret' && !isBack(line)",
      by: 'is asked about, and is on no record till then',
    },
  ]),
  ...of('core/talk/words', 'core/talk/asked', [
    {
      rule: 'A word with a question mark behind it is asked about and not done.',
      find: "replace(/ ?[?.]+$/, '')) ?? plain",
      into: "replace(/ ?[?.]+$/, '')) ?? plain.replace(/ ?[?.]+$/, '')",
      by: 'is asked about and not done',
    },
  ]),
  ...of('core/sheet/live', 'core/sheet/live', [
    {
      rule: 'What was said last, as the make-safe sheet, has its room before words and drawing of the prompt.',
      find: 'room - height(fits) - (input.said ?? 0)',
      into: 'room - height(fits)',
      by: 'stays in sight at ',
    },
  ]),
  ...of('core/talk/answer-asked', 'core/talk/asked', [
    {
      rule: 'What is quoted of a later step is marked as not yet to be done.',
      find: 'step > at ?',
      into: 'step < 0 ?',
      by: 'marks what stands in a later step, and keeps the tag of the plate to itself until it was read',
    },
    {
      rule: 'Until the plate was read no answer shows its tag, so that nobody copies it from the screen.',
      find: 'return machineNamed ||',
      into: 'return text !== from ||',
      by: 'marks what stands in a later step, and keeps the tag of the plate to itself until it was read',
    },
    {
      rule: 'A limit out of a book is never quoted without the word that the maker comes first.',
      find: 'found.some(({ fallback }) => fallback)',
      into: 'found.length === 0',
      by: 'with a limit from a book says that the maker comes first; one without says nothing of it',
    },
  ]),
  ...of('core/papers/find', 'core/papers/find', [
    {
      rule: 'Where too little of a question is found in any passage, nothing is quoted.',
      find: 'held < needed',
      into: 'held < 1',
      by: ' is nothing',
    },
    {
      rule: 'A passage that shares only a word such as asked with a question is not quoted.',
      find: 'if (!isAbout) return []',
      into: '',
      by: ' is nothing',
    },
  ]),
  ...of('core/talk/next-steps', 'core/talk/where', [
    {
      rule: 'Each step that is shown ahead is marked as not yet to be done.',
      find: '`NOT YET  ',
      into: '`',
      by: 'at a hold point and at a reading gives three steps with hazard and hold point, each marked',
    },
  ]),
  ...of('core/talk/where', 'core/talk/where', [
    {
      rule: 'A hold point that fell is told as fallen.',
      find: "closed: 'FALLEN, asked again'",
      into: "closed: 'complete'",
      by: 'at a reading tells how old the gas test is and when it lapses, by the clock of the moment',
    },
  ]),
  ...of('app/session', 'app/files', [
    {
      rule: 'A line keyed unseen where a PIN was asked is not looked up either.',
      find: ' || questionIn(line) !== null',
      into: '',
      by: 'whose question is gone looks up nothing that was keyed where a PIN was asked, and says nothing of it',
      in: 'app/session',
    },
    {
      rule: 'An attached file is on record only once its bytes are on disk.',
      find: 'const kept = await files.keep(file)',
      into: 'const kept = await Promise.race([files.keep(file), Promise.resolve({ ok: true as const, value: { ...file, name: file.given, sha256: "ab".repeat(32) } })])',
      by: 'is on record once its bytes are kept, and not before',
    },
    {
      rule: 'What is found after its question fell to a STOP asks nothing more.',
      find: 'if (snapshot.talk.ask !== asked) return',
      into: 'if (snapshot === null) return',
      by: 'holds back no STOP while it is looked for, and what is found after that is dropped',
    },
    {
      rule: 'A copy that did not go on record does not stay with the files of the job.',
      find: 'if (!snapshot.state.files.some((f) => f.name === kept.value.name))',
      into: 'if (snapshot === null)',
      by: 'is taken back from the disk when it did not go on record, as the job was closed meanwhile',
    },
  ]),
  ...of('core/job/fold', 'core/job/attachment', [
    {
      rule: 'An attached file is evidence for nothing: it completes no step.',
      find: 'return { ...state, files: [...state.files, { ...file, by }] }',
      into: "return { ...state, files: [...state.files, { ...file, by }], done: { ...state.done, [file.step ?? '']: { seq: file.seq } } }",
      by: 'answers nothing: at every prompt of the hold point and after it the same is asked as before',
    },
    {
      rule: 'An attached file does not end what may still be called out of a reading cut short.',
      find: "['note.written', 'file.attached', ",
      into: "['note.written', ",
      by: 'does not end what may still be called out of a reading cut short',
    },
    {
      rule: 'A question about a whole step changes no figure and settles nothing.',
      find: "    case 'readings.questioned':\n      return state",
      into: "      return state\n    case 'readings.questioned':\n      return { ...state, doubt: null, notApplicable: { ...state.notApplicable, [entry.step]: entry.text } }",
      by: 'to the last place are asked about, block nothing, and change no figure and no verdict',
      in: 'core/job/questions',
    },
  ]),
  ...of('core/job/attachment', 'core/job/attachment', [
    {
      rule: 'A file is kept under a plain name, which leads out of no folder.',
      find: 'return KEPT.test(name) && ',
      into: "return name !== '' && ",
      by: 'is refused as ',
    },
  ]),
  ...of('core/talk/ask-file', 'core/talk/attach', [
    {
      rule: 'While people are called out no file is asked for.',
      find: "if (prompt.kind === 'clear')",
      into: "if (prompt.kind === 'held')",
      by: 'gives way to coming out, and is not begun there',
    },
    {
      rule: 'The newest file is shown by name and age, and taken only when its number is keyed.',
      find: "return work === 'newest'",
      into: "return work === 'find'",
      by: 'for the newest, which is shown and never taken by itself',
    },
  ]),
  ...of('node/job-files', 'node/job-files', [
    {
      rule: 'A copy never takes the place of a file that is there.',
      find: "await (await fs.open(path, 'wx')).close()",
      into: "await (await fs.open(path, 'w')).close()",
      by: 'never takes the place of what somebody else laid there',
    },
    {
      rule: 'A file that changes while it is copied is not taken.',
      find: ' || after.size !== before.size || after.mtimeMs !== before.mtimeMs',
      into: '',
      by: 'one that is written over while it is copied, though its size stays',
    },
    {
      rule: 'A copy is synced before its entry says that it is kept.',
      find: '      await target.sync()\n',
      into: '',
      by: 'one for which the disk fails at the ',
    },
  ]),
  ...of('node/check-files', 'node/job-files', [
    {
      rule: 'A copy that is not what was attached is told as changed.',
      find: 'return hashOf(path) === sha256',
      into: 'return hashOf(path).length === sha256.length',
      by: 'is held against it: as attached, changed, gone, and what it does not name',
    },
  ]),
  ...of('ui/tab', 'ui/tab', [
    {
      rule: 'Tab hit twice is MAKE SAFE where a path is keyed too.',
      find: 'path && !again && ',
      into: 'path && ',
      by: 'the first completes the path, the next is make safe, and keys between begin anew',
    },
    {
      rule: 'Tab is MAKE SAFE wherever no path is keyed.',
      find: 'path && !again',
      into: '!again',
      by: 'is make safe at once on the empty line of the path, and at any other question',
    },
  ]),
]
