import { useState } from 'react';
import { Button, Input, Label, NumberField, TextField } from 'react-aria-components';
import { anchors, directions, evidenceGrades, ownExperience, type Anchor, type Direction, type Emphasis, type EvidenceGrade, type RuleAdvice, type SchemeRule, type WindowEdge } from '../../core/scheme/index.ts';

const anchorWords: Record<Anchor, string> = { 'period-start': 'day of the period start (1 is the first)', ovulation: 'days from ovulation (0 is the day)', 'next-period': 'days before the next period (−1 is the last)' };
const words = (list: readonly string[]): string => list.join(', ');
const listed = (text: string): string[] => text.split(',').map((w) => w.trim()).filter((w) => w !== '');

function Choice<T extends string>({ label, value, options, say, onChange }: { readonly label: string; readonly value: T; readonly options: readonly T[]; readonly say?: (option: T) => string; readonly onChange: (value: T) => void }) {
  return (
    <label className="field">
      <span>{label}</span>
      <select value={value} onChange={(e) => onChange(e.target.value as T)}>{options.map((o) => <option key={o} value={o}>{say ? say(o) : o.replaceAll('-', ' ')}</option>)}</select>
    </label>
  );
}

function Edge({ label, edge, onChange }: { readonly label: string; readonly edge: WindowEdge; readonly onChange: (edge: WindowEdge) => void }) {
  return (
    <div className="fields">
      <NumberField value={edge.day} onChange={(day) => onChange({ ...edge, day })}><Label>{label}</Label><Input className="short" /></NumberField>
      <Choice label="counted as" value={edge.anchor} options={anchors} say={(a) => anchorWords[a]} onChange={(anchor) => onChange({ anchor, day: anchor === 'period-start' ? 1 : anchor === 'ovulation' ? 0 : -1 })} />
    </div>
  );
}

/** The form for one rule of a scheme. Nothing changes until it is kept. */
export function RuleForm({ rule, onKeep, onLeave }: { readonly rule: SchemeRule; readonly onKeep: (rule: SchemeRule) => void; readonly onLeave: () => void }) {
  const [now, setNow] = useState(rule);
  const advise = (change: Partial<RuleAdvice>): void => setNow((r) => ({ ...r, advice: { ...r.advice, ...change } }));
  const emphasis = (i: number, change: Partial<Emphasis>): void => advise({ emphasis: now.advice.emphasis.map((e, j) => (j === i ? { ...e, ...change } : e)) });
  const text = (label: string, key: 'training' | 'heatAndCold' | 'workload' | 'sleep'): React.ReactNode => (
    <TextField value={now.advice[key] ?? ''} onChange={(value) => advise({ [key]: value.trim() === '' ? null : value })}><Label>{label}</Label><Input /></TextField>
  );
  return (
    <form className="rule-form" onSubmit={(e) => { e.preventDefault(); onKeep(now); }}>
      <TextField value={now.title} onChange={(title) => setNow({ ...now, title })} isRequired><Label>Name of the rule</Label><Input /></TextField>
      <Edge label="From" edge={now.window.from} onChange={(from) => setNow({ ...now, window: { ...now.window, from } })} />
      <Edge label="To" edge={now.window.to} onChange={(to) => setNow({ ...now, window: { ...now.window, to } })} />
      <Choice label="In a longer or shorter cycle" value={now.window.stretch} options={['fixed', 'scaled'] as const} say={(s) => (s === 'fixed' ? 'stays as many days' : 'stretches in proportion')} onChange={(stretch) => setNow({ ...now, window: { ...now.window, stretch } })} />
      <fieldset>
        <legend>More or less of</legend>
        {now.advice.emphasis.map((e, i) => (
          <div className="fields" key={i}>
            <TextField value={e.what} onChange={(what) => emphasis(i, { what })}><Label>What</Label><Input placeholder="carbohydrate, iron …" /></TextField>
            <Choice<Direction> label="which way" value={e.direction} options={directions} onChange={(direction) => emphasis(i, { direction })} />
            <Button className="plain" onPress={() => advise({ emphasis: now.advice.emphasis.filter((_, j) => j !== i) })}>Take out</Button>
          </div>
        ))}
        <Button className="plain" onPress={() => advise({ emphasis: [...now.advice.emphasis, { what: 'fibre', direction: 'more' }] })}>Add one</Button>
      </fieldset>
      <TextField value={words(now.advice.favour)} onChange={(value) => advise({ favour: listed(value) })}><Label>Foods to favour, with commas</Label><Input /></TextField>
      <TextField value={words(now.advice.leave)} onChange={(value) => advise({ leave: listed(value) })}><Label>Foods to leave, with commas</Label><Input /></TextField>
      <NumberField minValue={0} value={now.advice.fastingHours ?? NaN} onChange={(value) => advise({ fastingHours: Number.isNaN(value) ? null : value })}><Label>Hours without food, the night counted (empty: says nothing)</Label><Input className="short" /></NumberField>
      <div className="fields">{text('Training', 'training')}{text('Heat and cold', 'heatAndCold')}{text('Workload', 'workload')}{text('Sleep', 'sleep')}</div>
      <div className="fields">
        <Choice<EvidenceGrade> label="Evidence" value={now.evidence} options={evidenceGrades} onChange={(evidence) => setNow({ ...now, evidence })} />
        <TextField value={now.source === ownExperience ? '' : now.source} onChange={(source) => setNow({ ...now, source: source.trim() === '' ? ownExperience : source })}><Label>Source (empty: practitioner’s experience)</Label><Input /></TextField>
      </div>
      <div className="row-actions"><Button type="submit">Keep this rule</Button><Button className="plain" onPress={onLeave}>Leave it as it was</Button></div>
    </form>
  );
}
