import { listed } from '../messages/numbers.ts';
import { botherLines } from '../messages/statements.ts';
import type { SayCaution, SaySentence, TalkSheet } from './say-report.ts';

/**
 * The script as it may be said: each sentence as it stands when it passes, else its first rewrite, else
 * left out; words that must stand beside a line follow it, and what they point to is told. Footnotes
 * carry clauses and works; the description is what goes under the film. The
 * allergen line is `allergenLine`, or is made from `allergens`; null says that they are not worked out.
 */
export function talkSheet(sentences: readonly SaySentence[], about: { readonly title: string; readonly cautions: readonly SayCaution[]; readonly allergens: readonly string[] | null; readonly allergenLine?: string | null; readonly nutrition: readonly string[] }): TalkSheet {
  const footnotes: string[] = [];
  const note = (text: string): number => {
    const at = footnotes.indexOf(text);
    return at >= 0 ? at + 1 : footnotes.push(text);
  };
  const lines = sentences.map((sentence) => {
    const { instead } = sentence;
    const text = sentence.sayable ? sentence.text : (instead?.text ?? '');
    const kept = sentence.sayable || instead !== null;
    const beside = sentence.sayable ? [...new Set(sentence.claims.flatMap((claim) => claim.laws.flatMap((law) => law.beside)))] : (instead?.beside ?? []);
    const reading = sentence.claims.map((claim) => `“${claim.span}”: ${claim.readAs}${claim.unsure === null ? '' : ` ${claim.unsure}`}`);
    const figures = sentence.claims.flatMap((claim) => claim.laws.flatMap((law) => [...law.figures, ...law.clauses]));
    const works = sentence.evidence.map((e) => `${e.citation}${e.doi === null ? '' : `, doi ${e.doi}`} (${e.gradeName}): ${e.finding}${e.dose === null ? '' : ` ${e.dose}`}`);
    return { text, changedFrom: sentence.sayable ? null : sentence.text, beside, reading, notes: kept ? [...new Set([...figures, ...works].map(note))] : [] };
  }).filter((line) => line.text !== '');
  const once = lines.filter((line, i) => lines.findIndex((other) => other.text === line.text) === i);
  // 21 CFR 101.13(h)(4)(iii), from memory: one statement serves several claims that stand together.
  const told = new Set<string>();
  const spoken = once.map((line) => [line.text, ...line.beside.filter((words) => !told.has(words) && told.add(words))].join(' '));
  const allergens = about.allergenLine ?? (about.allergens === null ? botherLines.allergensUnknown : about.allergens.length === 0 ? botherLines.allergensNone : `Contains ${listed(about.allergens)}.`);
  const description = [
    about.title, '', ...(spoken.length > 0 ? [spoken.join(' '), ''] : []),
    ...(about.nutrition.length > 0 ? [`${botherLines.nutritionOfPortion} ${listed(about.nutrition)}.`] : []),
    botherLines.variedDiet, botherLines.education, allergens,
    ...(about.cautions.length > 0 ? ['', 'Please note', ...about.cautions.map((c) => `– ${c.text}`)] : []),
    ...(footnotes.length > 0 ? ['', 'Sources', ...footnotes.map((text, i) => `${i + 1}. ${text}`)] : []),
  ].join('\n');
  return { lines: once, footnotes, description };
}
