import { useState } from 'react';
import { Button, Input, Label, NumberField, TextArea, TextField } from 'react-aria-components';
import { evidenceGrades, type EvidenceGrade, type EvidenceNote } from '../../core/statements/index.ts';
import { noteFields } from '../../messages/own-note.ts';
import { gradeNames } from '../../messages/statements.ts';
import { ownNotes } from './say-api.ts';

const wordsOf = (text: string): string[] => text.split(',').map((word) => word.trim()).filter((word) => word !== '');
const orNull = (text: string): string | null => (text.trim() === '' ? null : text.trim());

const groupNames = ['Food or nutrient', 'Subject'];
const groupHints = ['ginger', 'cramp, period pain'];

/** One evidence note of hers. A sentence finds it when it has a word of each group. */
export function NoteForm({ note, onKept, onLeave }: { readonly note: EvidenceNote | null; readonly onKept: (notes: readonly EvidenceNote[]) => void; readonly onLeave: () => void }) {
  const [about, setAbout] = useState<readonly string[]>(() => [...(note?.about.map((group) => group.join(', ')) ?? []), '', ''].slice(0, Math.max(2, note?.about.length ?? 0)));
  const [grade, setGrade] = useState<EvidenceGrade>(note?.grade ?? 'early');
  const [text, setText] = useState({ statement: note?.statement ?? '', finding: note?.finding ?? '', citation: note?.citation ?? '', doi: note?.doi ?? '', population: note?.population ?? '', dose: note?.dose ?? '', doseFood: note?.doseFood.join(', ') ?? '' });
  const [grams, setGrams] = useState(note?.doseG ?? NaN);
  const [trouble, setTrouble] = useState<string | null>(null);
  const field = (name: keyof typeof text, more: { readonly hint: string; readonly required?: boolean; readonly long?: boolean }): React.ReactNode => (
    <TextField className={`react-aria-TextField${more.long ? ' wide' : ''}`} value={text[name]} onChange={(value) => setText((now) => ({ ...now, [name]: value }))}>
      <Label>{noteFields[name]}{more.required ? '' : ', if known'}</Label>
      {more.long ? <TextArea rows={3} placeholder={more.hint} /> : <Input placeholder={more.hint} />}
    </TextField>
  );
  const keep = (): void => {
    const content = {
      about: about.map(wordsOf), statement: text.statement, grade, finding: text.finding, citation: text.citation, doi: orNull(text.doi), population: text.population,
      dose: orNull(text.dose), doseG: Number.isNaN(grams) ? null : grams, doseFood: wordsOf(text.doseFood),
    };
    (note === null ? ownNotes.add(content) : ownNotes.change(note.id, content)).then(onKept).catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)));
  };
  return (
    <form className="note-form" aria-label={note === null ? 'A new evidence note' : `Change the note on ${note.statement}`} onSubmit={(e) => { e.preventDefault(); keep(); }}>
      {field('statement', { hint: 'Ginger and cramps', required: true })}
      <fieldset>
        <legend>{noteFields.about}</legend>
        {about.map((words, i) => (
          <TextField key={i} value={words} onChange={(value) => setAbout((now) => now.map((old, j) => (j === i ? value : old)))}><Label>{groupNames[i] ?? 'And one of these'}, with commas between</Label><Input placeholder={groupHints[i] ?? ''} /></TextField>
        ))}
      </fieldset>
      <label className="field"><span>{noteFields.grade}</span>
        <select value={grade} onChange={(e) => setGrade(evidenceGrades.find((g) => g === e.target.value) ?? grade)}>{evidenceGrades.map((g) => <option key={g} value={g}>{gradeNames[g]}</option>)}</select>
      </label>
      {field('finding', { hint: 'What the work found, in one or two sentences', required: true, long: true })}
      {field('citation', { hint: 'author, title, year; or: own notes, 2026', required: true, long: true })}
      {field('doi', { hint: '10.…' })}
      {field('population', { hint: 'how many, and who' })}
      {field('dose', { hint: '2 g a day for three days' })}
      <NumberField value={grams} onChange={setGrams} formatOptions={{ maximumFractionDigits: 3 }}><Label>{noteFields.doseG}, if known</Label><Input className="short" /></NumberField>
      {field('doseFood', { hint: 'ginger' })}
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      <div className="row-actions"><Button type="submit">Keep this note</Button><Button className="plain" onPress={onLeave}>Not now</Button></div>
    </form>
  );
}
