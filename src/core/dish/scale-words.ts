import { singular } from '../foods/index.ts';

const irregular: Readonly<Record<string, string>> = { leaf: 'leaves', loaf: 'loaves', half: 'halves', potato: 'potatoes', tomato: 'tomatoes', mango: 'mangoes', chilli: 'chillies', avocado: 'avocados', radish: 'radishes', egg: 'eggs' };

/** The plural of an English kitchen word, as a recipe prints it. */
export function plural(word: string): string {
  const known = irregular[word.toLowerCase()];
  if (known !== undefined) return word.slice(0, 1) + known.slice(1);
  if (/(s|x|z|ch|sh)$/i.test(word)) return `${word}es`;
  if (/[^aeiou]y$/i.test(word)) return `${word.slice(0, -1)}ies`;
  return `${word}s`;
}

/** A word in the number that an amount asks for: one for up to 1, many above. A word already so is left alone. */
export function numbered(word: string, quantity: number): string {
  const single = singular(word.toLowerCase());
  const isSingle = single === word.toLowerCase();
  if (quantity > 1) return isSingle ? plural(word) : word;
  return isSingle ? word : word.slice(0, 1) + single.slice(1);
}
