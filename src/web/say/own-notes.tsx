import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { EvidenceNote } from '../../core/statements/index.ts';
import { gradeNames } from '../../messages/statements.ts';
import { NoteForm } from './note-form.tsx';
import { ownNotes } from './say-api.ts';

/** Her own evidence notes: they stay on her machine and stand beside the sentences that speak of them. */
export function OwnNotes({ onChanged }: { readonly onChanged: () => void }) {
  const [notes, setNotes] = useState<readonly EvidenceNote[]>([]);
  const [editing, setEditing] = useState<EvidenceNote | 'new' | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const tell = (error: unknown): void => setTrouble(error instanceof Error ? error.message : String(error));
  useEffect(() => {
    ownNotes.list().then(setNotes).catch(tell);
  }, []);
  const now = (list: readonly EvidenceNote[]): void => {
    setNotes(list);
    setEditing(null);
    setTrouble(null);
    onChanged();
  };
  return (
    <section className="column own-notes" aria-labelledby="own-notes-title">
      <div className="column-head"><h2 id="own-notes-title">My evidence notes</h2>{editing === null && <Button className="plain" onPress={() => setEditing('new')}>Add a note</Button>}</div>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {editing !== null && <NoteForm key={editing === 'new' ? 'new' : editing.id} note={editing === 'new' ? null : editing} onKept={now} onLeave={() => setEditing(null)} />}
      {notes.length === 0 && editing === null && <p className="quiet">None yet. What you know from a work or a course stands beside the sentences that speak of it; it stays on this machine.</p>}
      <ul className="dish-list">
        {notes.map((note) => (
          <li key={note.id}>
            <div>
              <strong>{note.statement}</strong>
              <p className="quiet">{gradeNames[note.grade]} · {note.about.map((words) => words.join(', ')).join(' + ')} · {note.citation}</p>
              <p>{note.finding}</p>
            </div>
            <div className="row-actions">
              <Button className="plain" aria-label={`Change the note on ${note.statement}`} onPress={() => setEditing(note)}>Change</Button>
              <Button className="plain" aria-label={`Remove the note on ${note.statement}`} onPress={() => { ownNotes.remove(note.id).then(now).catch(tell); }}>Remove</Button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
