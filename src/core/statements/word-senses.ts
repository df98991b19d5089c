/** Broad kinds of everyday English words, compiled from WordNet: an illness, a part of the body, a word for getting better. */
export interface WordSenses {
  readonly source: string;
  readonly kinds: readonly { readonly kinds: readonly string[]; readonly words: string }[];
}

/** The kinds of a word by its base form. */
export type SenseIndex = ReadonlyMap<string, readonly string[]>;

export function senseIndex(senses: WordSenses): SenseIndex {
  const index = new Map<string, readonly string[]>();
  for (const { kinds, words } of senses.kinds) for (const word of words.split(' ')) index.set(word, kinds);
  return index;
}
