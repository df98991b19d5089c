import { useState } from 'react';
import { Button, Checkbox, Input, Label, NumberField } from 'react-aria-components';
import type { DeskOptions, FoodOffer } from '../../app/desk.ts';
import type { LineReport } from '../../app/dish-report.ts';
import { cookingMethods, type CookingMethod } from '../../core/dish/index.ts';
import { FoodPicker } from './food-picker.tsx';
import type { DishState } from './use-dish.ts';

const isMethod = (text: string): text is CookingMethod => (cookingMethods as readonly string[]).includes(text);

/** One line opened: how its grams came about, and every part of the reading to put right. Escape closes. */
export function LineEditor({ line, dish, options, onDone }: { readonly line: LineReport; readonly dish: DishState; readonly options: DeskOptions; readonly onDone: () => void }) {
  const [grams, setGrams] = useState<number>(line.gramsG === null ? NaN : Math.round(line.gramsG.value * 10) / 10);
  const offers: FoodOffer[] = line.food.others.map((o) => ({ code: o.code, name: o.name, tableName: '', state: null, table: '' }));
  return (
    <div
      className="line-editor"
      onKeyDown={(e) => {
        if (e.key === 'Escape' && !e.defaultPrevented) onDone();
      }}
    >
      <FoodPicker
        name={line.food.tableName ?? ''}
        offers={offers}
        onPick={(code) => dish.correct(line.key, { food: code })}
        onNone={() => dish.correct(line.key, { food: 'none' })}
      />
      <div className="fields">
        <NumberField
          value={grams}
          minValue={0}
          formatOptions={{ maximumFractionDigits: 1 }}
          onChange={(value) => {
            setGrams(value);
            if (!Number.isNaN(value)) dish.correct(line.key, { grams: value });
          }}
        >
          <Label>Grams into the pot, without peel or bone</Label>
          <Input />
        </NumberField>
        <label className="field">
          <span>Cooked how</span>
          <select value={line.cooking.method ?? ''} onChange={(e) => { if (isMethod(e.target.value)) dish.correct(line.key, { method: e.target.value }); }}>
            {line.cooking.method === null && <option value="">as the text says</option>}
            {options.methods.map((m) => <option key={m.id} value={m.id}>{m.label}</option>)}
          </select>
        </label>
        <Checkbox isSelected={line.eatenShare > 0} onChange={(eaten) => dish.correct(line.key, { eaten: eaten ? 1 : 0 })}>
          <span className="box" aria-hidden="true" /> It is eaten
        </Checkbox>
      </div>
      {line.gramsPath.length > 0 && (
        <div className="path">
          <h4>How the grams came about</h4>
          <ol>{line.gramsPath.map((step) => <li key={step}>{step}</li>)}</ol>
        </div>
      )}
      <p className="quiet">{[line.cooking.words, line.eatenWords].filter((w) => w !== null && w !== '').join(' ')}</p>
      <div className="row-actions">
        <Button onPress={onDone}>Close</Button>
        {line.corrected.length > 0 && <Button className="plain" onPress={() => { dish.correct(line.key, null); onDone(); }}>Take my changes back</Button>}
      </div>
    </div>
  );
}
