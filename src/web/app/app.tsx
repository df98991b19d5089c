import { useEffect, useState } from 'react';
import type { DeskOptions } from '../../app/desk.ts';
import type { DishChoices } from '../../app/dish-choices.ts';
import { api } from '../api.ts';
import { ChangePage } from '../change/change-page.tsx';
import { LarderPage } from '../change/larder-page.tsx';
import { SavedCookPage } from '../cook/saved-cook-page.tsx';
import { CyclePage } from '../cycle/cycle-page.tsx';
import { DishPage } from '../dish/dish-page.tsx';
import { OwnFoodsPage } from '../own-foods/own-foods-page.tsx';
import { SavedPage } from '../saved/saved-page.tsx';
import { DishSayPage } from '../say/dish-say-page.tsx';
import { SettingsPage } from '../settings/settings-page.tsx';
import { addressOf, usePlace, type Place } from './place.ts';

/** The bar across the top; pages about a dish keep the dish that she is at. */
function pagesFrom(place: Place): readonly { readonly place: Place; readonly name: string }[] {
  const id = 'id' in place ? place.id : null;
  return [
    { place: { page: 'dish', id }, name: 'The pot' },
    { place: { page: 'change', id }, name: 'Change it' },
    { place: { page: 'say', id }, name: 'Say it' },
    { place: { page: 'cook' }, name: 'Cook plan' },
    { place: { page: 'cycle' }, name: 'Her cycle' },
    { place: { page: 'saved' }, name: 'Saved dishes' },
    { place: { page: 'own-foods' }, name: 'My foods' },
    { place: { page: 'larder' }, name: 'Larder' },
    { place: { page: 'settings' }, name: 'Settings' },
  ];
}

interface Ground {
  readonly options: DeskOptions;
  readonly usual: DishChoices;
}

/** The desk: one bar across the top, one page below. */
export function App() {
  const place = usePlace();
  const [ground, setGround] = useState<Ground | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    Promise.all([api.options(), api.settings()])
      .then(([options, settings]) => setGround({ options, usual: { ...options.usualChoices, ...settings } }))
      .catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)));
  }, []);
  return (
    <>
      <a className="skip" href="#main">Go to the page</a>
      <header className="topbar">
        <a className="mark" href="#/" aria-label="Truepot, the pot">
          <svg viewBox="0 0 32 32" width="26" height="26" aria-hidden="true"><rect x="5" y="13" width="22" height="14" rx="3" fill="#f4f7f6" /><rect x="2" y="9" width="28" height="4" rx="2" fill="#e58a5e" /></svg>
          <span>Truepot</span>
        </a>
        <nav aria-label="Pages">
          {pagesFrom(place).map(({ place: to, name }) => (
            <a key={name} href={addressOf(to)} aria-current={place.page === to.page ? 'page' : undefined}>{name}</a>
          ))}
        </nav>
      </header>
      <main id="main" tabIndex={-1}>
        {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
        {ground !== null && (
          <>
            {place.page === 'dish' && <DishPage key={place.id ?? 'new'} id={place.id} options={ground.options} usual={ground.usual} />}
            {place.page === 'change' && <ChangePage key={place.id ?? 'new'} id={place.id} options={ground.options} usual={ground.usual} />}
            {place.page === 'say' && <DishSayPage key={place.id ?? 'new'} id={place.id} options={ground.options} usual={ground.usual} />}
            {place.page === 'cook' && <SavedCookPage options={ground.options} />}
            {place.page === 'cycle' && <CyclePage />}
            {place.page === 'saved' && <SavedPage />}
            {place.page === 'own-foods' && <OwnFoodsPage options={ground.options} />}
            {place.page === 'larder' && <LarderPage options={ground.options} />}
            {place.page === 'settings' && <SettingsPage options={ground.options} usual={ground.usual} onSaved={(usual) => setGround({ ...ground, usual })} />}
          </>
        )}
      </main>
      <footer className="foot">
        <p>Truepot teaches and computes; it is not medical advice. In pregnancy, with an illness, an allergy, medicines or a history of an eating disorder, ask a doctor or dietitian first.</p>
      </footer>
    </>
  );
}
