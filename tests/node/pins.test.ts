import { scryptSync } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { hashPin, isPin, pinFits } from '../../src/node/pins.ts'

// A low cost keeps the tests quick; the form and the code are the same.
const LN = 10

describe('a PIN', () => {
  it('fits its own hash and no other PIN does', async () => {
    const hash = await hashPin('4711', LN)
    expect(hash).toMatch(/^\$scrypt\$ln=10,r=8,p=1\$[A-Za-z0-9+/]+\$[A-Za-z0-9+/]+$/)
    expect(await pinFits('4711', hash)).toBe(true)
    expect(await pinFits('4712', hash)).toBe(false)
    expect(await pinFits('', hash)).toBe(false)
  })

  it('is salted: the same PIN twice gives two hashes', async () => {
    expect(await hashPin('4711', LN)).not.toBe(await hashPin('4711', LN))
  })

  // RFC 7914, section 12, second test vector: scrypt("password", "NaCl", N 1024, r 8, p 16, 64 bytes). Value as printed there,
  // first 16 bytes, from memory; it checks the function that the hash rests on.
  it('rests on scrypt as published', () => {
    const key = scryptSync('password', 'NaCl', 64, { N: 1024, r: 8, p: 16, maxmem: 64 * 1024 * 1024 })
    expect(key.subarray(0, 16).toString('hex')).toBe('fdbabe1c9d3472007856e7190d01e9fe')
  })

  it.each([
    '',
    'plain',
    '$scrypt$ln=99,r=8,p=1$AAAAAAAAAAAAAAAA$AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA',
    '$scrypt$ln=10,r=8,p=1$x$y',
  ])('fits no hash that cannot be read: %s', async (phc) => {
    expect(await pinFits('4711', phc)).toBe(false)
  })

  it('fits no key that is too cheap to work out, and so guessed in no time', async () => {
    expect(await pinFits('4711', await hashPin('4711', 9))).toBe(false)
  })

  it.each([
    ['123', false],
    ['1234', true],
    ['123456789012', true],
    ['1234567890123', false],
    ['12a4', false],
    ['１２３４', false],
  ])('%s is a PIN: %s', (text, is) => {
    expect(isPin(text)).toBe(is)
  })
})
