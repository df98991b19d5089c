import type { IngredientLine } from './recipe.ts';
import type { Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** The singular by rule: "tomatoes" → "tomato", "leaves" → "leaf"; words that only look plural are left. */
export function singular(word: string): string {
  if (word.length < 4 || /(?:ss|us|is)$/.test(word)) return word;
  if (/(?:lea|loa|hal|cal|kni)ves$/.test(word)) return `${word.slice(0, -3)}f`;
  if (/ies$/.test(word) && word.length > 4) return `${word.slice(0, -3)}y`;
  if (/(?:oes|ches|shes|xes|sses)$/.test(word)) return word.slice(0, -2);
  return word.endsWith('s') ? word.slice(0, -1) : word;
}

interface Named {
  readonly line: IngredientLine;
  readonly words: readonly string[];
  readonly plain: readonly string[];
  readonly head: string;
}

/** Finds the ingredient lines that a step speaks of. */
export interface LineNames {
  /** Ids of the lines named in the row, in the order named. `taken`: lines used so far, to tell two lines of one food apart. */
  named(row: Row, taken: ReadonlySet<string>, section: string | null): string[];
  readonly all: readonly string[];
}

const dull = new Set(['the', 'of', 'and', 'a', 'or', 'in', 'fresh', 'large', 'small', 'extra', 'your', 'my', 'with', 'for', 'water', 'hot', 'cold', 'boiling', 'plain', 'good', 'half', 'fat', 'free']);
const weakHeads = new Set(['stock', 'broth', 'oil', 'paste', 'purée', 'puree', 'powder', 'sauce', 'juice', 'vinegar', 'cube', 'seasoning', 'flour', 'milk', 'cream', 'water', 'salt', 'zest', 'butter', 'seed', 'flake', 'wine', 'cheese']);

/** Made from a beast, not the beast: "the beef" is not the beef stock. */
const madeFrom = new Set(['stock', 'broth', 'cube', 'bouillon', 'gravy', 'dripping', 'stockpot', 'powder', 'sauce', 'seasoning']);
const beasts = new Set(['beef', 'lamb', 'pork', 'chicken', 'turkey', 'veal', 'fish', 'duck', 'meat']);
const cuts = new Set(['steak', 'mince', 'brisket', 'chuck', 'shin', 'joint', 'shoulder', 'leg', 'chop', 'thigh', 'breast', 'drumstick', 'loin', 'belly', 'rump', 'sirloin', 'skirt', 'cheek', 'rib', 'neck', 'fillet', 'wing', 'topside', 'silverside', 'ribeye', 'tenderloin', 'escalope', 'cutlet', 'shank', 'poussin', 'cod', 'haddock', 'salmon', 'hake', 'pollock', 'plaice', 'trout', 'mackerel', 'mutton', 'hogget']);

export function lineNames(lines: readonly IngredientLine[], vocabulary: ReaderVocabulary): LineNames {
  const byWord = new Map<string, Named[]>();
  const bySection = new Map<string, string[]>();
  for (const line of lines) {
    const plain = line.food.name.toLowerCase().replace(/[’‘]/g, "'").split(/[^\p{L}\p{M}'-]+/u).filter((word) => word !== '');
    const words = plain.map(singular);
    const named: Named = { line, words, plain, head: words.at(-1) ?? '' };
    for (const word of new Set(words)) {
      if (dull.has(word) && words.length > 1) continue;
      const list = byWord.get(word);
      if (list) list.push(named);
      else byWord.set(word, [named]);
    }
    if (line.section !== null) for (const word of line.section.toLowerCase().split(/[^\p{L}]+/u).map(singular)) if (word.length > 3) bySection.set(word, [...(bySection.get(word) ?? []), line.id]);
  }

  /** "edam", "garl" of a terse hand: the one food word of the lines that begins so; undefined for words that mean something else. */
  const cutShort = (row: Row, at: number): Named[] | undefined => {
    const typed = row.words[at]!;
    if (typed.length < 4 || vocabulary.notVerbs.has(typed) || vocabulary.verbForms.has(typed) || vocabulary.units.spelled(typed) !== null || vocabulary.vesselKinds.has(typed) || vocabulary.adverbs.has(typed)) return undefined;
    const longer = [...byWord.keys()].filter((word) => word.startsWith(typed) && word.length > typed.length + 1);
    // "Butter" is no "buttermilk", "edam" is "edamame": where both parts are foods the longer is another one.
    if (vocabulary.isFood?.(typed) && longer.some((word) => vocabulary.isFood!(word.slice(typed.length)))) return undefined;
    return longer.length === 1 ? byWord.get(longer[0]!) : undefined;
  };

  const score = (named: Named, row: Row, at: number): number => {
    const around = row.words.slice(Math.max(0, at - 3), at + 3).map(singular);
    const matched = named.words.filter((word) => around.includes(word)).length;
    const hasHead = around.includes(named.head);
    const unit = named.line.amount?.unit;
    const byUnit = unit != null && row.words.slice(Math.max(0, at - 4), at + 4).some((word) => vocabulary.units.spelled(word)?.id === unit);
    return matched + (byUnit ? 0.4 : 0) + (singular(row.words[at]!) === named.head ? 0.6 : 0) + (named.plain.includes(row.words[at]!) ? 0.3 : 0) - (weakHeads.has(named.head) && !hasHead ? 1.2 : 0);
  };

  return {
    all: lines.map(({ id }) => id),
    named(row, taken, section) {
      const found: string[] = [];
      let matchedAt = -2;
      const put = (id: string): void => {
        if (!found.includes(id)) found.push(id);
      };
      for (let at = 0; at < row.words.length; at++) {
        if (row.tokens[at]!.kind !== 'word') continue;
        const everything = vocabulary.everything.longestAt(row.words, at);
        if (everything > 0) {
          const rest = /rest|remaining|other|else/.test(row.words.slice(at, at + everything).join(' '));
          for (const line of lines) if ((!rest || !taken.has(line.id)) && (section === null || line.section === null || line.section === section || !lines.some((other) => other.section === section))) put(line.id);
          at += everything - 1;
          continue;
        }
        const word = singular(row.words[at]!);
        const all = byWord.get(word);
        const beastOnly = beasts.has(word) && all !== undefined && all.every((named) => madeFrom.has(named.head)) && !row.words.slice(at + 1, at + 3).some((w) => madeFrom.has(singular(w)));
        const carved = beastOnly || (all === undefined && beasts.has(word)) ? [...byWord.values()].flat().filter((named, n, list) => cuts.has(named.head) && list.findIndex((other) => other.line === named.line) === n) : [];
        const candidates = (carved.length > 0 ? carved : beastOnly ? undefined : all) ?? (bySection.has(word) ? undefined : cutShort(row, at));
        if (!candidates) {
          for (const id of bySection.get(word) ?? []) put(id);
          const group = vocabulary.words.groups[row.words[at]!];
          if (group && (row.words[at - 1] === 'the' || row.words[at - 1] === 'ground' || row.words[at - 1] === 'and' || row.words[at - 1] === ','  || row.words[at - 1] === 'remaining')) {
            const near = lines.find(({ id }) => id === found.at(-1))?.section ?? section;
            const members = group.flatMap((member) => byWord.get(member) ?? []).filter((named) => !weakHeads.has(named.head));
            const here = members.filter(({ line }) => near === null || line.section === near);
            for (const { line } of here.length > 0 ? here : members) put(line.id);
          }
          continue;
        }
        // "chard leaves": the leaf is the chard's, not the bay's
        if (matchedAt === at - 1 && vocabulary.units.spelled(row.words[at]!) !== null && !candidates.some(({ line }) => found.at(-1) === line.id)) continue;
        matchedAt = at;
        const scored = candidates.slice(0, 40).map((named) => ({ named, score: score(named, row, at) }));
        const best = Math.max(...scored.map((entry) => entry.score));
        const top = scored.filter((entry) => entry.score > best - 0.05).map((entry) => entry.named.line);
        if (top.some(({ id }) => found.includes(id))) continue;
        const plural = word !== row.words[at];
        const names = new Set(top.map(({ food }) => food.name.toLowerCase()));
        if (plural && names.size > 1) top.forEach(({ id }) => put(id));
        else put((top.find((line) => !taken.has(line.id) && (section === null || line.section === section)) ?? top.find((line) => !taken.has(line.id)) ?? top[0]!).id);
      }
      return found;
    },
  };
}
