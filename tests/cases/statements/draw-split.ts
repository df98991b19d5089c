/** One sentence's classes, as the first labels have them; none for a sentence with nothing to check. */
export interface Labelled {
  readonly id: string;
  readonly classes: readonly string[];
}

export interface Split {
  readonly dev: readonly string[];
  readonly heldOut: readonly string[];
}

/** Numbers in [0, 1) from a seed: a linear congruential generator (Numerical Recipes' constants, from memory), enough to shuffle a list. */
function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

function shuffled(ids: readonly string[], random: () => number): string[] {
  return ids
    .map((id) => ({ id, key: random() }))
    .sort((a, b) => a.key - b.key || a.id.localeCompare(b.id))
    .map(({ id }) => id);
}

/**
 * Draws `share` of the sentences of each stratum for dev, the rest for held-out. A sentence belongs to the stratum of
 * its rarest class, so that a rare class is not left to the luck of a common one; sentences without a claim are one more stratum.
 */
export function drawSplit(rows: readonly Labelled[], seed: number, share: number): Split {
  const sizes = new Map<string, number>();
  for (const row of rows) for (const name of new Set(row.classes)) sizes.set(name, (sizes.get(name) ?? 0) + 1);
  const size = (name: string) => sizes.get(name) ?? 0;
  const strata = new Map<string, string[]>();
  for (const row of rows) {
    const rarest = [...new Set(row.classes)].sort((a, b) => size(a) - size(b) || a.localeCompare(b))[0] ?? 'none';
    strata.set(rarest, [...(strata.get(rarest) ?? []), row.id]);
  }
  const random = generator(seed);
  const dev: string[] = [];
  const heldOut: string[] = [];
  for (const name of [...strata.keys()].sort()) {
    const ids = shuffled(strata.get(name) ?? [], random);
    const cut = Math.round(ids.length * share);
    dev.push(...ids.slice(0, cut));
    heldOut.push(...ids.slice(cut));
  }
  return { dev: dev.sort(), heldOut: heldOut.sort() };
}
