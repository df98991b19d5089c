import type { DeskOptions } from '../../app/desk.ts';
import type { DishChoices } from '../../app/dish-choices.ts';
import { useDish } from '../dish/use-dish.ts';
import { SayPage } from './say-page.tsx';

/** Her script beside the dish that is in the pot, or beside a saved one. */
export function DishSayPage({ id, options, usual }: { readonly id: string | null; readonly options: DeskOptions; readonly usual: DishChoices }) {
  const dish = useDish(id, usual, options.demos[0]?.text ?? '');
  return <SayPage id={id} dish={dish} options={options} />;
}
