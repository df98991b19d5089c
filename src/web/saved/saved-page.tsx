import { useCallback, useEffect, useState } from 'react';
import { Button, Input, Label, SearchField, TextField } from 'react-aria-components';
import type { SavedDish } from '../../app/ports.ts';
import { addressOf } from '../app/place.ts';
import { api } from '../api.ts';

function NameForm({ start, action, onDone, onCancel }: { readonly start: string; readonly action: string; readonly onDone: (name: string) => Promise<unknown>; readonly onCancel: () => void }) {
  const [name, setName] = useState(start);
  const [trouble, setTrouble] = useState<string | null>(null);
  return (
    <form className="name-form" onSubmit={(e) => { e.preventDefault(); onDone(name).catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error))); }}>
      <TextField value={name} onChange={setName} isRequired autoFocus><Label>New name</Label><Input /></TextField>
      <Button type="submit">{action}</Button>
      <Button className="plain" onPress={onCancel}>Not now</Button>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
    </form>
  );
}

/** Saved dishes: find, open, rename, copy, put in the bin and bring back. */
export function SavedPage() {
  const [words, setWords] = useState('');
  const [bin, setBin] = useState(false);
  const [dishes, setDishes] = useState<readonly SavedDish[] | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [naming, setNaming] = useState<{ id: string; action: 'rename' | 'copy' } | null>(null);
  const load = useCallback(() => {
    api.dishes(words, bin).then((found) => { setDishes(found); setTrouble(null); }).catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)));
  }, [words, bin]);
  useEffect(load, [load]);
  const act = (work: Promise<unknown>): void => {
    work.then(load).catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)));
  };
  return (
    <div className="page">
      <div className="column-head">
        <h1>{bin ? 'The bin' : 'Saved dishes'}</h1>
        <Button className="plain" onPress={() => setBin(!bin)}>{bin ? 'Back to the saved dishes' : 'Show the bin'}</Button>
      </div>
      <SearchField value={words} onChange={setWords} className="search"><Label>Find by words of the name or the recipe</Label><Input /></SearchField>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {dishes?.length === 0 && <p className="quiet">{words !== '' ? 'No dish has all these words.' : bin ? 'The bin is empty.' : 'Nothing is saved yet. Work a dish out and press Save.'}</p>}
      <ul className="dish-list">
        {dishes?.map((dish) => (
          <li key={dish.id}>
            <div>
              {bin ? <strong>{dish.name}</strong> : <a href={addressOf({ page: 'dish', id: dish.id })}>{dish.name}</a>}
              <p className="quiet">{new Date(dish.savedAt).toLocaleDateString('en-GB', { dateStyle: 'long' })} · state {dish.version} · {dish.text.split('\n').find((l) => l.trim() !== '' && l.trim() !== dish.name)?.slice(0, 90) ?? ''}</p>
            </div>
            {bin ? <Button onPress={() => act(api.bringBack(dish.id))}>Bring back</Button> : (
              <div className="row-actions">
                <Button className="plain" onPress={() => setNaming({ id: dish.id, action: 'rename' })}>Rename</Button>
                <Button className="plain" onPress={() => setNaming({ id: dish.id, action: 'copy' })}>Copy</Button>
                <Button className="plain" aria-label={`To the bin: ${dish.name}`} onPress={() => act(api.removeDish(dish.id))}>To the bin</Button>
              </div>
            )}
            {naming?.id === dish.id && (
              <NameForm
                key={naming.action}
                start={naming.action === 'copy' ? `${dish.name}, changed` : dish.name}
                action={naming.action === 'copy' ? 'Copy' : 'Rename'}
                onCancel={() => setNaming(null)}
                onDone={async (name) => {
                  await (naming.action === 'copy' ? api.copyDish(dish.id, name) : api.renameDish(dish.id, name));
                  setNaming(null);
                  load();
                }}
              />
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}
