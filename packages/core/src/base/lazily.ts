/** What `make` gives, worked out when first asked for and kept. */
export function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
