import { useState } from 'react';
import { Button, Input, Label, NumberField, Radio, RadioGroup, TextField } from 'react-aria-components';
import type { DeskOptions } from '../../app/desk.ts';
import { isNutrientId, type NutrientId, type OwnFood } from '../../core/foods/index.ts';
import { api } from '../api.ts';

// The figures that packs print come first; the rest are there for the packs that print more.
const usual = ['energy', 'fat', 'saturates', 'carbohydrate', 'sugars', 'fibre', 'protein', 'sodium'];

/** A food of her own, copied from a pack. A field left empty is "not on the pack", not nothing. */
export function OwnFoodForm({ options, food, onDone }: { readonly options: DeskOptions; readonly food: OwnFood | null; readonly onDone: () => void }) {
  const [name, setName] = useState(food?.name ?? '');
  const [source, setSource] = useState(food?.source ?? '');
  const [date, setDate] = useState(food?.date ?? new Date().toLocaleDateString('sv-SE'));
  const [perPortion, setPerPortion] = useState(food?.basis.kind === 'per-portion');
  const [grams, setGrams] = useState(food?.basis.kind === 'per-portion' ? food.basis.grams : NaN);
  const [printed, setPrinted] = useState<Partial<Record<NutrientId, number>>>(food?.printed ?? {});
  const [trouble, setTrouble] = useState<string | null>(null);
  const figures = options.nutrients.filter((n) => n.id !== 'water' && n.id !== 'ash');
  const field = (id: string): React.ReactNode => {
    const n = figures.find((f) => f.id === id);
    if (!n || !isNutrientId(n.id)) return null;
    const key = n.id;
    return (
      <NumberField key={key} minValue={0} value={printed[key] ?? NaN} formatOptions={{ maximumFractionDigits: 4 }} onChange={(value) => setPrinted((now) => {
          const next = { ...now, [key]: value };
          if (Number.isNaN(value)) delete next[key];
          return next;
        })}>
        <Label>{n.name}, {n.unit}</Label>
        <Input placeholder="not printed" />
      </NumberField>
    );
  };
  return (
    <form
      className="own-food-form"
      onSubmit={(e) => {
        e.preventDefault();
        const content = { name, source, date, basis: perPortion ? { kind: 'per-portion' as const, grams: Number.isNaN(grams) ? 0 : grams } : { kind: 'per-100g' as const }, printed };
        (food === null ? api.addOwnFood(content) : api.changeOwnFood(food.id, content)).then(onDone).catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)));
      }}
    >
      <div className="fields">
        <TextField value={name} onChange={setName} isRequired autoFocus><Label>Name, as your recipes write it</Label><Input /></TextField>
        <TextField value={source} onChange={setSource} isRequired><Label>Where the figures stand</Label><Input placeholder="label of the 500 g pack" /></TextField>
        <TextField value={date} onChange={setDate} isRequired><Label>Copied on (year-month-day)</Label><Input /></TextField>
      </div>
      <RadioGroup value={perPortion ? 'portion' : '100'} onChange={(value) => setPerPortion(value === 'portion')} className="radios">
        <Label>The pack prints figures for</Label>
        <Radio value="100"><span className="dot" aria-hidden="true" /> 100 g</Radio>
        <Radio value="portion"><span className="dot" aria-hidden="true" /> a portion</Radio>
      </RadioGroup>
      {perPortion && <NumberField minValue={0} value={grams} onChange={setGrams}><Label>Grams of one portion</Label><Input className="short" /></NumberField>}
      <div className="fields figures">{usual.map(field)}</div>
      <details><summary>More figures</summary><div className="fields figures">{figures.filter((n) => !usual.includes(n.id)).map((n) => field(n.id))}</div></details>
      <p className="quiet">If the pack prints salt, divide by 2.5 for sodium in grams: 1 g of salt is 400 mg of sodium.</p>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      <div className="row-actions"><Button type="submit">Keep this food</Button><Button className="plain" onPress={onDone}>Not now</Button></div>
    </form>
  );
}
