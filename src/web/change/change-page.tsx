import { useEffect, useRef, useState } from 'react';
import { Button, Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import type { ChangeDesk } from '../../app/change-desk.ts';
import type { ChangeWords } from '../../app/change-report.ts';
import type { DeskOptions } from '../../app/desk.ts';
import type { DishChoices } from '../../app/dish-choices.ts';
import { api } from '../api.ts';
import { useDish } from '../dish/use-dish.ts';
import { changeApi } from './change-api.ts';
import { CostPanel } from './cost-panel.tsx';
import { HoldsPanel } from './holds-panel.tsx';
import { SidePanel } from './side-panel.tsx';
import { SizePanel } from './size-panel.tsx';
import { SwapPanel } from './swap-panel.tsx';
import { WishPanel } from './wish-panel.tsx';
import { troubleText } from './use-asked.ts';
import './change.css';

const tabs = [['swap', 'Swap a line'], ['wish', 'Reach a goal'], ['size', 'Size'], ['holds', 'Allergens and diets'], ['cost', 'Cost'], ['side', 'Side by side']] as const;

interface Ground { readonly choices: ChangeDesk['options']; readonly settings: ChangeWords }

/** Changing the dish that is on the pot page (`id` null: the unsaved one): every change of a saved dish is kept as a state with a name. */
export function ChangePage({ id, options, usual }: { readonly id: string | null; readonly options: DeskOptions; readonly usual: DishChoices }) {
  const dish = useDish(id, usual, options.demos[0]?.text ?? '');
  const [ground, setGround] = useState<Ground | null>(null);
  const [lineId, setLineId] = useState<string | null>(null);
  const [tab, setTab] = useState<string>('swap');
  const panels = useRef<HTMLDivElement>(null);
  const [said, setSaid] = useState<string | null>(null);
  const [before, setBefore] = useState<{ readonly text: string; readonly choices: DishChoices } | null>(null);
  useEffect(() => {
    Promise.all([changeApi.options(), changeApi.settings()]).then(([choices, settings]) => setGround({ choices, settings })).catch((error: unknown) => setSaid(troubleText(error)));
  }, []);
  const take = (text: string, label: string, choices: Partial<DishChoices> = {}): void => {
    setBefore({ text: dish.text, choices: dish.choices });
    dish.setText(text);
    dish.choose(choices);
    setSaid(`Changed: ${label}.`);
    if (id !== null) api.saveDish(id, text, { ...dish.choices, ...choices }, label.slice(0, 200)).then((kept) => dish.setSaved(kept)).catch((error: unknown) => setSaid(troubleText(error)));
  };
  const back = (): void => {
    if (before === null) return;
    dish.setText(before.text);
    dish.choose(before.choices);
    setSaid('Taken back.');
    if (id !== null) api.saveDish(id, before.text, before.choices, 'taken back').then((kept) => dish.setSaved(kept)).catch((error: unknown) => setSaid(troubleText(error)));
    setBefore(null);
  };
  const choose = (line: string): void => {
    setLineId(line);
    setTab('swap');
    // On a narrow screen the answer is below the list.
    if (window.matchMedia('(max-width: 900px)').matches) panels.current?.scrollIntoView({ block: 'start' });
  };
  const lines = dish.report?.lines ?? [];
  return (
    <div className="change-page">
      <aside className="change-lines" aria-labelledby="change-title">
        <h1 id="change-title">{dish.report?.title ?? 'The dish'}</h1>
        <p className="quiet">{dish.report?.servings.words}</p>
        <ul>
          {lines.map((l) => (
            <li key={l.id}><Button className="change-line" aria-pressed={lineId === l.id} onPress={() => choose(l.id)}>{l.text}{lines.filter((x) => x.text === l.text).length > 1 && <span className="swap-why">{l.food.name}</span>}</Button></li>
          ))}
        </ul>
        <p role="status" className="quiet">{said}</p>
        {before !== null && <Button className="plain" onPress={back}>Take the last change back</Button>}
      </aside>
      <Tabs ref={panels} className="change-tabs" selectedKey={tab} onSelectionChange={(key) => setTab(String(key))}>
        <TabList aria-label="Ways to change the dish" className="change-tablist">{tabs.map(([key, name]) => <Tab key={key} id={key} className="change-tab">{name}</Tab>)}</TabList>
        {ground !== null && (
          <>
            <TabPanel id="swap"><SwapPanel dish={dish} lineId={lineId} onText={take} /></TabPanel>
            <TabPanel id="wish"><WishPanel dish={dish} options={options} choices={ground.choices} onText={take} /></TabPanel>
            <TabPanel id="size"><SizePanel dish={dish} options={options} onText={take} /></TabPanel>
            <TabPanel id="holds">
              <HoldsPanel dish={dish} choices={ground.choices} list={ground.settings.allergenList} onList={(allergenList) => { const settings = { ...ground.settings, allergenList }; void changeApi.saveSettings(settings).then((kept) => setGround({ ...ground, settings: kept })).catch((error: unknown) => setSaid(troubleText(error))); }} />
            </TabPanel>
            <TabPanel id="cost"><CostPanel dish={dish} /></TabPanel>
            <TabPanel id="side"><SidePanel dish={dish} id={id} /></TabPanel>
          </>
        )}
      </Tabs>
    </div>
  );
}
