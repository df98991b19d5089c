import type { FoodMatch, MatchNote } from '../core/foods/index.ts';

const text = (note: MatchNote, key: string): string => String(note.data[key] ?? '');

const formWords: Readonly<Record<string, string>> = { raw: 'fresh or raw', peel: 'zest', canned: 'tinned' };
const formText = (form: string): string => formWords[form] ?? form;

const endings = (sentence: string): string => (/[.!?]$/.test(sentence) ? sentence : `${sentence}.`);

/** One reason or remark of a match, as a sentence for people. */
export function matchNoteText(note: MatchNote): string {
  switch (note.code) {
    case 'name': return `Read as ${text(note, 'name')}.`;
    case 'own-food': return `Your own food “${text(note, 'name')}”.`;
    case 'slip-read': return `“${text(note, 'typed')}” is read as “${text(note, 'read')}”. Is that right?`;
    case 'unknown-words': return `“${text(note, 'words')}” was passed over: Truepot does not know it as part of a food’s name.`;
    case 'colour-ignored': return `The colour “${text(note, 'word')}” was passed over.`;
    case 'part-ignored': return `The tables are asked for the food as a whole, not for “${text(note, 'word')}” alone.`;
    case 'other-order': return 'The words were read in another order.';
    case 'second-food': return `Two foods stand here; ${text(note, 'name')} is counted. Put the other on a line of its own if you use it.`;
    case 'form-asked': return `Taken as ${formText(text(note, 'form'))}.`;
    case 'form-missing': return `The tables have no ${text(note, 'name')} that is ${formText(text(note, 'asked'))}; ${formText(text(note, 'used'))} stands in.`;
    case 'kitchen-note': return endings(text(note, 'text'));
    case 'table-name': return `No kitchen name fits “${text(note, 'name')}”; the tables’ “${text(note, 'table')}” is used. Is that the one?`;
    case 'several-meanings': return `“${text(note, 'name')}” can also mean ${text(note, 'other')}.`;
    case 'no-table-food': return text(note, 'text') !== '' ? endings(text(note, 'text')) : `The tables have no ${text(note, 'name')}: what it gives is not known.`;
    case 'no-food': return `No food was found for “${text(note, 'name')}”. What it gives is not known, which is not the same as nothing. Choose a food or leave it so.`;
  }
}

/** How a line's food was found, a sentence a reason. */
export function matchReasons(match: FoodMatch): string[] {
  return match.reasons.filter((note) => note.code !== 'name').map(matchNoteText);
}
