import { useState } from 'react';
import { Checkbox } from 'react-aria-components';
import type { DeskOptions } from '../../app/desk.ts';
import type { DishChoices } from '../../app/dish-choices.ts';
import { isMeasureSystem } from '../../core/quantity/index.ts';
import { authorityText } from '../../messages/authorities.ts';
import { api } from '../api.ts';

/** What a new dish starts with. A saved dish keeps its own choices. */
export function SettingsPage({ options, usual, onSaved }: { readonly options: DeskOptions; readonly usual: DishChoices; readonly onSaved: (usual: DishChoices) => void }) {
  const [said, setSaid] = useState<string | null>(null);
  const keep = (change: Partial<DishChoices>): void => {
    const next = { ...usual, ...change };
    api.saveSettings({ lifeStage: next.lifeStage, authority: next.authority, measures: next.measures, countOptional: next.countOptional })
      .then(() => { onSaved(next); setSaid('Kept. New dishes start with this.'); })
      .catch((error: unknown) => setSaid(error instanceof Error ? error.message : String(error)));
  };
  const stage = options.lifeStages.find((s) => s.id === usual.lifeStage);
  return (
    <div className="page narrow">
      <h1>Settings</h1>
      <p className="quiet">What a new dish starts with. A saved dish keeps its own choices.</p>
      <div className="stack">
        <label className="field">
          <span>Cups, spoons and pints are those of</span>
          <select value={usual.measures} onChange={(e) => { if (isMeasureSystem(e.target.value)) keep({ measures: e.target.value }); }}>{options.measures.map((m) => <option key={m.id} value={m.id}>{m.label}</option>)}</select>
        </label>
        <label className="field">
          <span>Portions stand beside the day of</span>
          <select value={usual.lifeStage} onChange={(e) => { const next = options.lifeStages.find((s) => s.id === e.target.value); if (next) keep({ lifeStage: next.id, authority: next.authorities.includes(usual.authority) ? usual.authority : (next.authorities[0] ?? usual.authority) }); }}>{options.lifeStages.map((s) => <option key={s.id} value={s.id}>{s.label}</option>)}</select>
        </label>
        <label className="field">
          <span>by the figures of</span>
          <select value={usual.authority} onChange={(e) => { const authority = stage?.authorities.find((a) => a === e.target.value); if (authority) keep({ authority }); }}>{stage?.authorities.map((a) => <option key={a} value={a}>{authorityText(a)}</option>)}</select>
        </label>
        <Checkbox isSelected={usual.countOptional} onChange={(countOptional) => keep({ countOptional })}><span className="box" aria-hidden="true" /> Count optional ingredients and those “to serve”</Checkbox>
      </div>
      <p role="status" className="quiet">{said}</p>
    </div>
  );
}
