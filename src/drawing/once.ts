/** A value worked out when it is first asked for, and kept for whoever asks again. */
export function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** What follows from a thing that never changes, worked out once for each and kept as long as the thing itself. */
export function onceFor<Key extends object, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const made = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    const { value } = made.get(key) ?? { value: make(key) };
    made.set(key, { value });
    return value;
  };
}
