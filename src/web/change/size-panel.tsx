import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { ScaleReport } from '../../app/change-report.ts';
import type { DeskOptions } from '../../app/desk.ts';
import type { DishChoices } from '../../app/dish-choices.ts';
import type { Pan, ScaleAim } from '../../core/dish/index.ts';
import type { DishState } from '../dish/use-dish.ts';
import { changeApi } from './change-api.ts';
import { troubleText } from './use-asked.ts';

type Kind = 'portions' | 'factor' | 'at-hand' | 'nutrient' | 'pan' | 'volume';
const kinds: readonly { readonly kind: Kind; readonly words: string }[] = [
  { kind: 'portions', words: 'a number of portions' }, { kind: 'factor', words: 'times as much' }, { kind: 'at-hand', words: 'what I have of one line' },
  { kind: 'nutrient', words: 'a nutrient in a portion' }, { kind: 'pan', words: 'another tin or pan' }, { kind: 'volume', words: 'another pot, by litres' },
];

interface PanDraft { readonly shape: Pan['shape']; readonly a: string; readonly b: string; readonly depth: string }

function panOf({ shape, a, b, depth }: PanDraft): Pan {
  const depthCm = depth.trim() === '' ? null : Number(depth);
  if (shape === 'round') return { shape, acrossCm: Number(a), depthCm };
  if (shape === 'square') return { shape, sideCm: Number(a), depthCm };
  return { shape, lengthCm: Number(a), widthCm: Number(b), depthCm };
}

function PanFields({ title, pan, onChange }: { readonly title: string; readonly pan: PanDraft; readonly onChange: (pan: PanDraft) => void }) {
  const number = (label: string, key: 'a' | 'b' | 'depth') => <label className="field"><span>{label}</span><input inputMode="decimal" value={pan[key]} onChange={(e) => onChange({ ...pan, [key]: e.target.value })} /></label>;
  return (
    <fieldset className="fields">
      <legend>{title}</legend>
      <label className="field"><span>Shape</span><select value={pan.shape} onChange={(e) => onChange({ ...pan, shape: e.target.value as Pan['shape'] })}><option value="round">round</option><option value="square">square</option><option value="oblong">oblong</option></select></label>
      {number(pan.shape === 'round' ? 'Across, cm' : pan.shape === 'square' ? 'Side, cm' : 'Length, cm', 'a')}
      {pan.shape === 'oblong' && number('Width, cm', 'b')}
      {number('Depth, cm (may be empty)', 'depth')}
    </fieldset>
  );
}

/** The dish for another number of portions, another pan, what is at hand, or a nutrient target. */
export function SizePanel({ dish, options, onText }: { readonly dish: DishState; readonly options: DeskOptions; readonly onText: (text: string, label: string, choices: Partial<DishChoices>) => void }) {
  const lines = dish.report?.lines ?? [];
  const [kind, setKind] = useState<Kind>('portions');
  const [amount, setAmount] = useState('8');
  const [lineId, setLineId] = useState<string | null>(null);
  const [nutrient, setNutrient] = useState('magnesium');
  const [from, setFrom] = useState<PanDraft>({ shape: 'round', a: '20', b: '', depth: '' });
  const [to, setTo] = useState<PanDraft>({ shape: 'square', a: '23', b: '', depth: '' });
  const [fromLitres, setFromLitres] = useState('2');
  const [report, setReport] = useState<ScaleReport | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const aim = (): ScaleAim => {
    const value = Number(amount.replace(',', '.'));
    switch (kind) {
      case 'portions': return { kind, count: value };
      case 'factor': return { kind, factor: value };
      case 'at-hand': return { kind, lineId: lineId ?? lines[0]?.id ?? '', grams: value };
      case 'nutrient': return { kind, nutrient, portionAmount: value };
      case 'pan': return { kind, from: panOf(from), to: panOf(to) };
      case 'volume': return { kind, fromMl: Number(fromLitres) * 1000, toMl: value * 1000 };
    }
  };
  const ask = (): void => {
    setTrouble(null);
    changeApi.scale({ text: dish.text, choices: dish.choices }, aim()).then(setReport).catch((error: unknown) => { setReport(null); setTrouble(troubleText(error)); });
  };
  const unit = options.nutrients.find((n) => n.id === nutrient)?.unit ?? '';
  const asks: Partial<Record<Kind, string>> = { portions: 'Portions', factor: 'Times', 'at-hand': 'Grams, as bought', nutrient: `Amount in a portion, ${unit}`, volume: 'My pot, litres' };
  return (
    <div>
      <h2>Write it for …</h2>
      <form className="change-form" onSubmit={(e) => { e.preventDefault(); ask(); }}>
        <div className="fields">
          <label className="field wide"><span>Another size by</span><select value={kind} onChange={(e) => setKind(e.target.value as Kind)}>{kinds.map((k) => <option key={k.kind} value={k.kind}>{k.words}</option>)}</select></label>
          {kind === 'at-hand' && <label className="field wide"><span>Line</span><select value={lineId ?? lines[0]?.id ?? ''} onChange={(e) => setLineId(e.target.value)}>{lines.map((l) => <option key={l.id} value={l.id}>{l.text}</option>)}</select></label>}
          {kind === 'nutrient' && <label className="field wide"><span>Nutrient</span><select value={nutrient} onChange={(e) => setNutrient(e.target.value)}>{options.nutrients.map((n) => <option key={n.id} value={n.id}>{n.name}</option>)}</select></label>}
          {kind === 'volume' && <label className="field"><span>The recipe’s pot, litres</span><input inputMode="decimal" value={fromLitres} onChange={(e) => setFromLitres(e.target.value)} /></label>}
          {kind !== 'pan' && <label className="field"><span>{asks[kind]}</span><input inputMode="decimal" value={amount} onChange={(e) => setAmount(e.target.value)} /></label>}
        </div>
        {kind === 'pan' && <><PanFields title="The recipe’s tin" pan={from} onChange={setFrom} /><PanFields title="My tin" pan={to} onChange={setTo} /></>}
        <Button type="submit">Write it</Button>
      </form>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {report !== null && (
        <div aria-live="polite">
          <p>{report.words}</p>
          {report.warnings.map((w) => <p key={w} className="asks-line">{w}</p>)}
          <table className="change-table">
            <thead><tr><th scope="col">Before</th><th scope="col">After</th></tr></thead>
            <tbody>{report.lines.map((l) => <tr key={l.lineId} data-state={l.state}><td>{l.before}</td><td>{l.state === 'kept' ? <span className="quiet">as it is</span> : l.after}{l.words !== null && <span className="swap-why">{l.words}</span>}</td></tr>)}</tbody>
          </table>
          {report.times.length > 0 && <><h3>Times and pans</h3><ul>{report.times.map((t) => <li key={t}>{t}</li>)}</ul><p className="quiet">Common practice in kitchens, no measured source: look and taste.</p></>}
          <Button onPress={() => onText(report.text, report.words, report.choices)}>Make this the recipe</Button>
        </div>
      )}
    </div>
  );
}
