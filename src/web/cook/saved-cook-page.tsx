import { useEffect, useState } from 'react';
import type { DeskOptions } from '../../app/desk.ts';
import { api } from '../api.ts';
import { CookPage } from './cook-page.tsx';
import type { DishChoice } from './order-form.tsx';

/** The cook plan with the dishes of the desk to choose from: those that are saved, then the invented examples. */
export function SavedCookPage({ options }: { readonly options: DeskOptions }) {
  const [saved, setSaved] = useState<readonly DishChoice[]>([]);
  useEffect(() => {
    const examples = options.demos.map(({ name, text }) => ({ name, text }));
    api.dishes('', false).then((dishes) => setSaved([...dishes.map(({ name, text }) => ({ name, text })), ...examples])).catch(() => setSaved(examples));
  }, [options]);
  return <CookPage saved={saved} />;
}
