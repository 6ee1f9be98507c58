// What a lead asks of one part after the pull of RG-27-1: the answer is of that part, whatever its sheets are called, and not of another.
import { expect } from 'vitest'
import { answered } from './answered.ts'
import type { Walk } from './example.ts'

export function expectAskedOfParts(walk: Walk): void {
  const rod = answered(walk, 'when must the rod be looked at')
  expect(rod).toMatch(
    /^No day of it is worked out here[^\n]*: rod\n[\s\S]*Size and form judged: MONITOR[\s\S]*Size and form judged: accept, by VN[\s\S]*Read again at the next opening/,
  )
  expect(rod).not.toMatch(/Worn gaps|Load and pocket|Bore judged/)
  expect(answered(walk, 'when must the flywheel be looked at')).toMatch(/Load and pocket judged/)

  const gaps = answered(walk, "why weren't the ring gaps judged again")
  expect(gaps).toMatch(
    /^That it is right no record tells[^\n]*: ring, gaps\n[\s\S]*Worn gaps judged: REPLACE[\s\S]*NOT JUDGED: [^\n]*Worn gaps judged/,
  )
  expect(gaps).not.toMatch(/B-11/)
  expect(answered(walk, 'why was the bore measured twice')).toMatch(/^Void with B-11/)

  // A hole that hissed is gas inside, whatever its sheet is called.
  const piston = answered(walk, 'was the piston empty')
  expect(piston).toMatch(/Vent holes: It hissed[\s\S]*Both hissed for about a minute/)
  expect(answered(walk, 'who signed that the piston is hollow')).toMatch(
    /^Signed, with these words: piston, hollow\n[\s\S]*Hollow or solid, as it was proved: hold point signed by VN/,
  )
  const fit = answered(walk, 'how near is the liner fit to its limit')
  expect(fit).toMatch(
    /\nOf what is named, liner, fit:\n[\s\S]*liner interference 0\.042\smm of at most 0\.051\smm, 82\s% used/,
  )
  expect(answered(walk, 'may VN decide that')).toMatch(
    /^Nobody any more: the job is closed\n[\s\S]*Bore judged: REWORK: replace, by VN/,
  )
  expect(answered(walk, 'what happened to tag V-41')).toMatch(/^What the log has of V-41\nV-41, tag/)
  expect(answered(walk, 'what happened to the rust in the jacket')).toMatch(
    /^No answer is made of it here[\s\S]*[Rr]ust/,
  )

  const bored = answered(walk, 'who bored the new liner')
  expect(bored).toMatch(/Finish-bored and honed: hold point signed by VN/)
  expect(bored).not.toMatch(/can let in/)
  expect(answered(walk, 'why is one reading not judged')).toMatch(
    /^Read again and judged by no verdict[\s\S]*NOT JUDGED: [^\n]*Worn gaps/,
  )
  expect(answered(walk, 'who took P-JD1 off')).toMatch(
    /^What the log has of P-JD1\nP-JD1, personal lock of JD[^\n]*keyed off by IM[\s\S]*\[x\] personal lock of JD off {2}P-JD1/,
  )

  // Of a liner it is the bore that is judged, and the reason names it.
  const liner = answered(walk, 'was the liner replaced')
  // Decided twice: the first fell with the gauge.
  expect(liner).toMatch(
    /Bore judged: replace, by VN[^\n]*, which does not stand any more\n[\s\S]*Bore judged: replace, by VN[^\n]*\(entry \d+\)\n/,
  )
  expect(liner).toMatch(/New liner in: seen to be so/)
  const rodNew = answered(walk, 'was the rod renewed')
  expect(rodNew).toMatch(/^No decision to renew it is in this log\. What was keyed of new parts\n/)
  expect(rodNew).not.toMatch(/Bore judged: replace|NOT JUDGED/)
}
