import { useState } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Input, Label, Modal, NumberField, TextField } from 'react-aria-components';
import type { DeskOptions } from '../../app/desk.ts';
import { authorityText } from '../../messages/authorities.ts';
import { api } from '../api.ts';
import { goTo } from '../app/place.ts';
import type { DishState } from './use-dish.ts';
import { VersionsDialog } from './versions-dialog.tsx';

function SaveButton({ dish }: { readonly dish: DishState }) {
  const [name, setName] = useState('');
  const [said, setSaid] = useState<string | null>(null);
  const words = (error: unknown): string => (error instanceof Error ? error.message : String(error));
  if (dish.saved !== null) {
    const { id } = dish.saved;
    return (
      <>
        <Button onPress={() => { api.saveDish(id, dish.text, dish.choices, null).then((now) => { dish.setSaved(now); setSaid('Saved.'); }).catch((e: unknown) => setSaid(words(e))); }}>Save</Button>
        <span role="status" className="quiet">{said}</span>
      </>
    );
  }
  return (
    <DialogTrigger>
      <Button onPress={() => setName(dish.report?.title ?? '')}>Save</Button>
      <Modal className="modal" isDismissable>
        <Dialog className="dialog">
          {({ close }) => (
            <form onSubmit={(e) => {
              e.preventDefault();
              api.createDish(name, dish.text, dish.choices).then((now) => { close(); goTo({ page: 'dish', id: now.id }); }).catch((error: unknown) => setSaid(words(error)));
            }}>
              <Heading slot="title">Save this dish</Heading>
              <TextField value={name} onChange={setName} autoFocus isRequired><Label>Name</Label><Input /></TextField>
              {said !== null && <p className="trouble" role="alert">{said}</p>}
              <div className="row-actions"><Button type="submit">Save</Button><Button className="plain" onPress={close}>Not now</Button></div>
            </form>
          )}
        </Dialog>
      </Modal>
    </DialogTrigger>
  );
}

/** What is chosen about the dish as a whole, and what can be done with it. */
export function DishBar({ dish, options }: { readonly dish: DishState; readonly options: DeskOptions }) {
  const { choices, report } = dish;
  const stage = options.lifeStages.find((s) => s.id === choices.lifeStage);
  return (
    <div className="dish-bar">
      <div className="column-head">
        <h1 id="portion-title">{dish.saved?.name ?? report?.title ?? 'One portion'}</h1>
        <div className="row-actions no-print">
          <SaveButton dish={dish} />
          {dish.saved !== null && <VersionsDialog dish={dish} id={dish.saved.id} />}
          <Button className="plain" onPress={() => window.print()}>Print</Button>
        </div>
      </div>
      <div className="fields">
        <NumberField minValue={0.5} maxValue={1000} value={report?.servings.count ?? NaN} onChange={(count) => dish.choose({ servings: Number.isNaN(count) ? null : count })}>
          <Label>Portions</Label>
          <Input className="short" />
        </NumberField>
        <label className="field">
          <span>Beside the day of</span>
          <select
            value={choices.lifeStage}
            onChange={(e) => {
              const next = options.lifeStages.find((s) => s.id === e.target.value);
              if (next) dish.choose({ lifeStage: next.id, authority: next.authorities.includes(choices.authority) ? choices.authority : (next.authorities[0] ?? choices.authority) });
            }}
          >
            {options.lifeStages.map((s) => <option key={s.id} value={s.id}>{s.label}</option>)}
          </select>
        </label>
        <label className="field">
          <span>by the figures of</span>
          <select value={choices.authority} onChange={(e) => { const authority = stage?.authorities.find((a) => a === e.target.value); if (authority) dish.choose({ authority }); }}>
            {stage?.authorities.map((a) => <option key={a} value={a}>{authorityText(a)}</option>)}
          </select>
        </label>
        <NumberField minValue={1} value={choices.cookedWeightG ?? NaN} onChange={(grams) => dish.choose({ cookedWeightG: Number.isNaN(grams) ? null : grams })}>
          <Label>Cooked pot on the scale, g</Label>
          <Input className="short" placeholder="estimated" />
        </NumberField>
      </div>
      {report !== null && <p className={report.servings.basis === 'proposed' ? 'asks-line' : 'quiet'}>{report.servings.words}{report.servings.basis === 'chosen' && <> <Button className="link" onPress={() => dish.choose({ servings: null })}>As the recipe says</Button></>}</p>}
    </div>
  );
}
