import { useEffect, useState } from 'react';
import { Button, Checkbox, Input, Label, Radio, RadioGroup, TextArea, TextField } from 'react-aria-components';
import type { CycleAnswer, CycleStart } from '../../app/cycle-answer.ts';
import type { Scheme } from '../../core/scheme/index.ts';
import { cycleApi, saveFile, type CycleAsk } from './cycle-api.ts';
import { CycleResult } from './cycle-result.tsx';
import { SchemeEditor } from './scheme-editor.tsx';
import './cycle.css';

const example = 'age: 33\n2026-03-17\n2026-04-20\nabout 27 May 2026';

/** A record on the left, what it gives on the right. Nothing is kept: the record lives in her own file. */
export function CyclePage() {
  const [start, setStart] = useState<CycleStart | null>(null);
  const [scheme, setScheme] = useState<Scheme | null>(null);
  const [text, setText] = useState('');
  const [on, setOn] = useState('');
  const [order, setOrder] = useState<CycleAsk['order']>(null);
  const [noneSince, setNoneSince] = useState(false);
  const [menuChanged, setMenuChanged] = useState('');
  const [region, setRegion] = useState('GB');
  const [editing, setEditing] = useState(false);
  const [answer, setAnswer] = useState<CycleAnswer | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const told = (error: unknown): void => setTrouble(error instanceof Error ? error.message : String(error));
  useEffect(() => {
    cycleApi.start().then((s) => { setStart(s); setScheme(s.schemes[0] ?? null); }).catch(told);
  }, []);
  const ask = (change: Partial<CycleAsk> = {}): CycleAsk => ({ text, on: on === '' ? null : on, order, scheme: scheme ?? 'no-phase-rules', days: 42, noneSince, menuChanged: menuChanged === '' ? null : menuChanged, region, ...change });
  const work = (change: Partial<CycleAsk> = {}): void => {
    cycleApi.workOut(ask(change)).then((a) => { setAnswer(a); setTrouble(null); }).catch(told);
  };
  const asks = (code: string): boolean => answer?.words.questions.some((q) => q.code === code) ?? false;
  return (
    <div className="cycle">
      <div className="cycle-record">
        <h1>Cycle record</h1>
        <TextField value={text} onChange={setText}>
          <Label>First days of periods, one on a line, or a table by day</Label>
          <TextArea rows={14} placeholder={example} spellCheck={false} />
        </TextField>
        <p className="quiet">Add what is so: “age: 34”, “combined pill since 2026-01-10”, “breastfeeding”, “perimenopause”. Nothing you type here is kept; save the text in a file of your own.</p>
        <div className="fields">
          <TextField value={on} onChange={setOn}><Label>Reckon from (empty: today)</Label><Input placeholder="2026-06-14" /></TextField>
          <label className="field"><span>Phase rules</span>
            <select value={scheme?.id ?? ''} onChange={(e) => setScheme(start?.schemes.find((s) => s.id === e.target.value) ?? scheme)}>
              {start?.schemes.map((s) => <option key={s.id} value={s.id}>{s.name}</option>)}
              {scheme && !start?.schemes.some((s) => s.id === scheme.id) && <option value={scheme.id}>{scheme.name}</option>}
            </select>
          </label>
        </div>
        <details>
          <summary>More</summary>
          <div className="fields">
            <TextField value={menuChanged} onChange={setMenuChanged}><Label>The menu changed on</Label><Input placeholder="2026-05-01" /></TextField>
            <label className="field"><span>Region, for crisis lines</span><select value={region} onChange={(e) => setRegion(e.target.value)}>{start?.regions.map((r) => <option key={r}>{r}</option>)}</select></label>
          </div>
        </details>
        {answer !== null && answer.words.questions.length > 0 && <ul className="asks">{answer.words.questions.map((q) => <li key={q.text} data-severity="question">{q.text.replace(/ \(--.*?\)/, '')}</li>)}</ul>}
        {asks('ambiguous-order') && (
          <RadioGroup className="radios" value={order ?? ''} onChange={(value) => { setOrder(value as CycleAsk['order']); work({ order: value as CycleAsk['order'] }); }}>
            <Label>In these dates first comes</Label>
            <Radio value="day-first"><span className="dot" aria-hidden="true" /> the day</Radio>
            <Radio value="month-first"><span className="dot" aria-hidden="true" /> the month</Radio>
          </RadioGroup>
        )}
        {(asks('none-since') || noneSince) && <Checkbox isSelected={noneSince} onChange={(value) => { setNoneSince(value); work({ noneSince: value }); }}><span className="box" aria-hidden="true" /> No period has started since the last one here</Checkbox>}
        {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
        <div className="row-actions">
          <Button onPress={() => work()}>Work it out</Button>
          <Button className="plain" isDisabled={answer === null} onPress={() => { cycleApi.calendar(ask()).then((file) => saveFile('kitchen-plan.ics', file)).catch(told); }}>Calendar file</Button>
          <Button className="plain" onPress={() => setEditing(!editing)} aria-expanded={editing}>{editing ? 'Close the rules' : 'Change the rules'}</Button>
        </div>
        {editing && scheme && <SchemeEditor scheme={scheme} onChange={(changed) => setScheme(changed.id === 'no-phase-rules' || changed.id === 'demo-four-pots' ? { ...changed, id: 'my-rules', invented: false } : changed)} />}
      </div>
      {answer === null ? <p className="cycle-empty quiet">The forecast, the days and what to take to a doctor appear here. It is never for contraception and never for trying to conceive.</p> : <CycleResult answer={answer} />}
    </div>
  );
}
