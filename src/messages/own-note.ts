/** The fields of an evidence note of hers, as the form and the messages name them. */
export const noteFields = {
  statement: 'What people say', about: 'Words by which a sentence finds it', grade: 'How well it is known', finding: 'What was found', citation: 'The work', doi: 'DOI', population: 'Who was studied',
  dose: 'What the studies gave', doseG: 'The same in grams a day', doseFood: 'Food of the dish to hold beside it',
} as const;
export type NoteField = keyof typeof noteFields;

const howToMend: Readonly<Record<NoteField, string>> = {
  statement: 'write it in 3 to 300 letters, for example “Ginger and cramps”',
  about: 'give at least one word for the food and one for the subject, each of 2 to 60 letters, with commas between',
  grade: 'choose one of the list',
  finding: 'write it in 3 to 1,000 letters',
  citation: 'name author, title and year, or “own notes” with the year, in 3 to 300 letters',
  doi: 'a DOI begins with 10. and has no spaces; leave it empty if there is none',
  population: 'at most 300 letters',
  dose: 'at most 300 letters',
  doseG: 'a number above 0 and at most 10,000, without a unit; leave it empty if it is not known',
  doseFood: 'at most 10 foods of at most 60 letters, with commas between',
};

/** What is wrong with a note, field by field, and how to mend it. */
export function noteFaults(fields: readonly string[]): string {
  const known = [...new Set(fields)].filter((field): field is NoteField => field in noteFields);
  const each = known.map((field) => `${noteFields[field]}: ${howToMend[field]}.`);
  return `The note was not kept; what you typed is still there.\n${each.length > 0 ? each.join('\n') : 'It is not a note: the fields are missing.'}`;
}

export const noteGone = 'That note is not among yours. It may have been removed on another screen; look in the list again.';
