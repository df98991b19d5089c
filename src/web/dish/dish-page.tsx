import { useState } from 'react';
import type { DeskOptions } from '../../app/desk.ts';
import type { DishChoices } from '../../app/dish-choices.ts';
import type { NutrientId } from '../../core/foods/index.ts';
import { DishBar } from './dish-bar.tsx';
import { LineList } from './line-list.tsx';
import { PathDrawer } from './path-drawer.tsx';
import { PortionPanel } from './portion-panel.tsx';
import { PotText } from './pot-text.tsx';
import { RecipeCard } from './recipe-card.tsx';
import { useDish } from './use-dish.ts';

/** The pot: the recipe's text, its lines as read, and what one portion gives, side by side. */
export function DishPage({ id, options, usual }: { readonly id: string | null; readonly options: DeskOptions; readonly usual: DishChoices }) {
  const dish = useDish(id, usual, options.demos[0]?.text ?? '');
  const [asked, setAsked] = useState<NutrientId | null>(null);
  const [lineAsked, setLineAsked] = useState<string | null>(null);
  return (
    <>
      <div className="dish" data-working={dish.working || undefined}>
        <PotText dish={dish} options={options} />
        <section className="column lines-column" aria-labelledby="lines-title">
          <LineList dish={dish} options={options} open={lineAsked} onOpen={setLineAsked} />
        </section>
        <section className="column portion-column" aria-labelledby="portion-title">
          <DishBar dish={dish} options={options} />
          <PortionPanel dish={dish} options={options} onAsk={setAsked} />
        </section>
      </div>
      {dish.report !== null && <RecipeCard report={dish.report} stage={options.lifeStages.find((s) => s.id === dish.choices.lifeStage)?.label ?? ''} />}
      {asked !== null && <PathDrawer dish={dish} nutrient={asked} onClose={() => setAsked(null)} />}
    </>
  );
}
