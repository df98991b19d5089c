import { useEffect, useState } from 'react';
import { Button, Dialog, Heading, Modal } from 'react-aria-components';
import type { Explanation } from '../../app/dish-report.ts';
import type { NutrientId } from '../../core/foods/index.ts';
import { percent } from '../../messages/numbers.ts';
import { api } from '../api.ts';
import type { DishState } from './use-dish.ts';

/** The whole path of one number, down to the foods, grams, factors and sources. */
export function PathDrawer({ dish, nutrient, onClose }: { readonly dish: DishState; readonly nutrient: NutrientId; readonly onClose: () => void }) {
  const [path, setPath] = useState<Explanation | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const { text, choices } = dish;
  useEffect(() => {
    api.explain(text, choices, nutrient).then(setPath).catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)));
  }, [text, choices, nutrient]);
  return (
    <Modal className="drawer" isOpen isDismissable onOpenChange={(open) => { if (!open) onClose(); }}>
      <Dialog className="dialog path-dialog">
        <div className="column-head">
          <Heading slot="title">{path?.title ?? 'The path of this number'}</Heading>
          <Button className="plain" onPress={onClose}>Close</Button>
        </div>
        {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
        {path?.summary.map((sentence) => <p key={sentence}>{sentence}</p>)}
        <ol className="path-parts">
          {path?.parts.map((part) => (
            <li key={part.lineId}>
              <details open={(part.share ?? 0) > 0.15}>
                <summary>
                  <span className="part-line">{part.line}</span>
                  {part.share !== null && <span className="part-share"><span className="part-bar" style={{ width: `${part.share * 4.5}rem` }} />{percent(part.share)}</span>}
                </summary>
                <ol className="path-steps">
                  {part.steps.map((step) => <li key={step.words}>{step.words}{step.source !== null && <span className="source">{step.source}</span>}</li>)}
                </ol>
              </details>
            </li>
          ))}
        </ol>
        {path !== null && path.uncertainty.length > 0 && (
          <section>
            <h3>Where the range comes from</h3>
            <ul className="plain-list">{path.uncertainty.map((cause) => <li key={cause.words}><span>{cause.words}</span><span className="quiet">{percent(cause.share)}</span></li>)}</ul>
          </section>
        )}
      </Dialog>
    </Modal>
  );
}
