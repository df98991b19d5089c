/** Irregular forms and spelling variants, from data/statements/words/forms.yaml. */
export interface WordForms {
  readonly irregular: Readonly<Record<string, string>>;
  readonly spelling: readonly (readonly [string, string])[];
  readonly ise: readonly string[];
}

/** One spelling for British and American variants, straight apostrophes, lower case, no accents. */
export function oneSpelling(word: string, forms: WordForms): string {
  let text = word.toLowerCase().replace(/[\u2019\u2018\u02bc`]/g, "'").normalize('NFD').replace(/[\u0300-\u036f]/g, '');
  for (const [from, to] of forms.spelling) if (text.includes(from)) text = text.replace(from, to);
  return text.replace(/is(e[sd]?|es|ing|er)$/, (whole, end: string, at: number) => (forms.ise.some((w) => w === `${text.slice(0, at)}ise`) ? `iz${end}` : whole));
}

const vowel = /[aeiouy]/;

function stripped(stem: string): string[] {
  if (stem.length < 2 || !vowel.test(stem)) return [];
  const last = stem.at(-1) ?? '';
  const undoubled = stem.length > 3 && last === stem.at(-2) && !'aeiou'.includes(last) ? [stem.slice(0, -1)] : [];
  return [stem, `${stem}e`, ...undoubled];
}

/** A word with its possible base forms: "easing" → easing, ease; "cramps" → cramps, cramp. The word must be in one spelling already. */
export function baseForms(word: string, forms: WordForms): string[] {
  const found = new Set<string>([word]);
  const add = (w: string): void => {
    if (w.length > 1) found.add(w);
  };
  const bare = word.replace(/'(s|ll|ve|re|d|m)$|'$/, '');
  if (bare !== word) add(bare);
  const irregular = forms.irregular[bare];
  if (irregular !== undefined) add(irregular);
  if (/ies$/.test(bare)) add(`${bare.slice(0, -3)}y`);
  if (/ves$/.test(bare)) [`${bare.slice(0, -3)}f`, `${bare.slice(0, -3)}fe`].forEach(add);
  if (/(x|ch|sh|s|z|o)es$/.test(bare)) add(bare.slice(0, -2));
  if (/[^su]s$/.test(bare)) add(bare.slice(0, -1));
  if (/ied$/.test(bare)) add(`${bare.slice(0, -3)}y`);
  if (/ed$/.test(bare)) stripped(bare.slice(0, -2)).forEach(add);
  if (/ing$/.test(bare)) stripped(bare.slice(0, -3)).forEach(add);
  if (/in'$/.test(word)) stripped(word.slice(0, -3)).forEach(add);
  return [...found];
}
