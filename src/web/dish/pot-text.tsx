import { useId, useRef } from 'react';
import { Button } from 'react-aria-components';
import type { DeskOptions } from '../../app/desk.ts';
import type { DishState } from './use-dish.ts';

/** The recipe as she typed or pasted it. A saved page or a text file can be dropped in. */
export function PotText({ dish, options }: { readonly dish: DishState; readonly options: DeskOptions }) {
  const label = useId();
  const file = useRef<HTMLInputElement>(null);
  const read = async (chosen: File | undefined): Promise<void> => {
    if (chosen) dish.setText(await chosen.text());
  };
  return (
    <section className="column text-column" aria-labelledby={label}>
      <div className="column-head">
        <h2 id={label}>Recipe</h2>
        <div className="row-actions">
          <Button className="plain" onPress={() => file.current?.click()}>Open a file</Button>
          <Button className="plain" onPress={() => dish.setText('')} isDisabled={dish.text === ''}>Empty</Button>
        </div>
      </div>
      <input ref={file} type="file" hidden accept=".txt,.md,.html,.htm,.json,text/*" onChange={(e) => void read(e.target.files?.[0])} />
      <textarea
        aria-labelledby={label}
        spellCheck={false}
        value={dish.text}
        placeholder={'Paste a recipe here, or type it:\n\nBean stew, for 4\n2 tins white beans\na good handful of chopped kale\n…'}
        onChange={(e) => dish.setText(e.target.value)}
        onDrop={(e) => {
          const dropped = e.dataTransfer.files[0];
          if (!dropped) return;
          e.preventDefault();
          void read(dropped);
        }}
      />
      <div className="hint">
        Examples, invented for this desk:
        <ul>{options.demos.map((demo) => <li key={demo.name}><Button className="link" onPress={() => dish.setText(demo.text)}>{demo.name}</Button></li>)}</ul>
      </div>
    </section>
  );
}
