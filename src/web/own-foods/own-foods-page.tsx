import { useCallback, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { DeskOptions } from '../../app/desk.ts';
import type { OwnFood } from '../../core/foods/index.ts';
import { api } from '../api.ts';
import { OwnFoodForm } from './own-food-form.tsx';

/** Foods typed in from packs. A food of her own is found by its name before any food of the tables. */
export function OwnFoodsPage({ options }: { readonly options: DeskOptions }) {
  const [foods, setFoods] = useState<readonly OwnFood[]>([]);
  const [editing, setEditing] = useState<OwnFood | 'new' | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const load = useCallback(() => {
    api.ownFoods().then(setFoods).catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)));
  }, []);
  useEffect(load, [load]);
  return (
    <div className="page">
      <div className="column-head"><h1>My foods</h1>{editing === null && <Button onPress={() => setEditing('new')}>Add a food from its pack</Button>}</div>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {editing !== null && <OwnFoodForm key={editing === 'new' ? 'new' : editing.id} options={options} food={editing === 'new' ? null : editing} onDone={() => { setEditing(null); load(); }} />}
      {foods.length === 0 && editing === null && <p className="quiet">None yet. Copy the figures of a pack once, and every recipe that names the food uses them.</p>}
      <ul className="dish-list">
        {foods.map((food) => (
          <li key={food.id}>
            <div>
              <strong>{food.name}</strong>
              <p className="quiet">{food.basis.kind === 'per-100g' ? 'figures for 100 g' : `figures for a portion of ${food.basis.grams} g`} · {Object.keys(food.printed).length} figures · {food.source}, {food.date}</p>
            </div>
            <div className="row-actions">
              <Button className="plain" onPress={() => setEditing(food)}>Change</Button>
              <Button className="plain" aria-label={`Remove ${food.name}`} onPress={() => { api.removeOwnFood(food.id).then(load).catch((error: unknown) => setTrouble(String(error))); }}>Remove</Button>
            </div>
          </li>
        ))}
      </ul>
    </div>
  );
}
