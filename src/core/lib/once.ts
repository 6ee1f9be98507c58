// What is reckoned from something that never changes is reckoned once.

/** As `make`, but once for each key. Only for keys that never change, and what is made must not be changed either. */
export function oncePer<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, { readonly value: V }>()
  return (key) => {
    let found = known.get(key)
    if (found === undefined) {
      found = { value: make(key) }
      known.set(key, found)
    }
    return found.value
  }
}

/** As `make`, but once for each pair of keys. */
export function oncePerPair<A extends object, B extends object, V>(
  make: (a: A, b: B) => V,
): (a: A, b: B) => V {
  const of = oncePer((a: A) => oncePer((b: B) => make(a, b)))
  return (a, b) => of(a)(b)
}
