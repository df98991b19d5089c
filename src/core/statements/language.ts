/** What a text is written in, as far as the rules need to know. `no-words`: emoji or marks only. */
export type Language = 'english' | 'other' | 'no-words';

// The commonest short words of English; a text of some length without any is not English.
const common = new Set(['the', 'a', 'an', 'and', 'of', 'to', 'in', 'is', 'it', 'you', 'your', 'this', 'that', 'with', 'for', 'my', 'i', 'on', 'are', 'was', 'or', 'not', 'no', 'be', 'have', 'has', 'at', 'as', 'so', 'but', 'we', 'what', 'if', 'from', 'by', 'can', 'will', 'more', 'than', 'these', 'they', 'she', 'her', 'our', "it's", 'all', 'do', 'one', 'here', 'how', 'when', 'about', 'good', 'eat', 'full', 'rich', 'low', 'high', 'free', 'source', 'helps', 'help', 'great', 'every', 'just', 'some', 'make', 'get', 'up', 'then', 'who', 'there', 'may', 'food', 'bowl', 'soup', 'packed']);
// Words that English does not have and its neighbours have often.
const foreign = new Set(['und', 'der', 'die', 'das', 'ist', 'nicht', 'mit', 'für', 'ein', 'eine', 'auch', 'le', 'la', 'les', 'est', 'et', 'des', 'une', 'pour', 'avec', 'dans', 'que', 'el', 'los', 'las', 'es', 'y', 'con', 'para', 'por', 'una', 'il', 'di', 'che', 'della', 'per', 'sono', 'het', 'een', 'van', 'niet', 'met', 'og', 'det', 'er', 'på', 'av', 'och', 'att', 'som', 'är', 'nie', 'jest', 'się', 'na', 'do', 'z', 'não', 'uma', 'com', 'os', 'hai', 'ka', 'ki', 'ke', 'mein', 'bahut', 'ile', 've', 'bir', 'bu']);

/** Tells whether the rules, which are English, can read a text. */
export function languageOf(text: string): Language {
  const words = text.slice(0, 4000).toLowerCase().replace(/[\u2019]/g, "'").match(/\p{L}[\p{L}\p{M}']*/gu) ?? [];
  if (words.length === 0) return 'no-words';
  const latin = words.filter((w) => /^[\p{Script=Latin}\p{M}']+$/u.test(w)).length;
  if (latin < words.length * 0.6) return 'other';
  const english = words.filter((w) => common.has(w)).length;
  const other = words.filter((w) => foreign.has(w) && !common.has(w)).length;
  if (other > english) return 'other';
  return words.length >= 8 && english < words.length * 0.06 && /[^\x00-\x7f]/.test(text.replace(/[\u2010-\u2027\u2030-\u205e\p{Extended_Pictographic}]/gu, '')) ? 'other' : 'english';
}
