import { useState } from 'react';
import { Checkbox, CheckboxGroup, Label } from 'react-aria-components';
import type { DeskOptions } from '../../app/desk.ts';
import type { DishChoices } from '../../app/dish-choices.ts';
import type { SaySentence } from '../../app/say-report.ts';
import { lawIds, type LawId } from '../../core/statements/index.ts';
import { lawNames } from '../../messages/statements.ts';
import { ClaimCard } from './claim-card.tsx';
import { HoldsList } from './holds-list.tsx';
import { MarkedScript } from './marked-script.tsx';
import { OtherDishChoice } from './other-dish.tsx';
import { OwnNotes } from './own-notes.tsx';
import { SheetPanel } from './sheet-panel.tsx';
import { useSay } from './use-say.ts';
import './say.css';

/** Words for a dish: her script on the left, the marked script and its reasons on the right. */
export function SayPage({ id, dish, options }: { readonly id: string | null; readonly dish: { readonly text: string; readonly choices: DishChoices }; readonly options: DeskOptions }) {
  const say = useSay(dish);
  const [open, setOpen] = useState<number | null>(null);
  const [done, setDone] = useState('');
  const { checked } = say;
  const report = checked?.report ?? null;
  const sentence = report?.sentences.find((s) => s.claims.some((c) => c.start === open)) ?? report?.sentences.find((s) => !s.sayable) ?? null;
  const claim = sentence?.claims.find((c) => c.start === open) ?? sentence?.claims[0] ?? null;
  const replace = (old: SaySentence, text: string): void => {
    if (checked === null || say.script !== checked.script) return;
    say.setScript(checked.script.slice(0, old.start) + text + checked.script.slice(old.end));
    setOpen(null);
    setDone('The sentence was changed and is checked again.');
  };
  return (
    <div className="say">
      <section className="column" aria-labelledby="script-title">
        <h1 id="script-title">Words for {report?.title ?? 'the dish in the pot'}</h1>
        <CheckboxGroup className="laws" value={[...say.laws]} onChange={(laws) => { if (laws.length > 0) say.setLaws(laws as LawId[]); }}>
          <Label>Laws</Label>
          {lawIds.map((law) => <Checkbox key={law} value={law}><span className="box" aria-hidden="true" />{lawNames[law]}</Checkbox>)}
        </CheckboxGroup>
        <Checkbox isSelected={say.pregnant} onChange={(is) => say.setPregnant(is)}><span className="box" aria-hidden="true" />Somebody who listens may be pregnant</Checkbox>
        <OtherDishChoice own={id} options={options} compared={report?.compared?.words ?? null} onChoose={(other) => say.setOther(other)} />
        <label className="script-label" htmlFor="script">Script, caption or voice-over</label>
        <textarea id="script" value={say.script} onChange={(e) => { say.setScript(e.target.value); setDone(''); }} placeholder="This stew is packed with iron. …" />
        <p role="status" className="quiet">{done}</p>
      </section>
      <section className="column checked" aria-live="polite" aria-labelledby="marks-title">
        <h2 id="marks-title">Checked</h2>
        {say.trouble !== null && <p className="trouble" role="alert">{say.trouble}</p>}
        {report?.notChecked != null && <p className="asks-line">{say.script.trim() === '' ? 'Type or paste your words into the box.' : report.notChecked}</p>}
        {checked !== null && checked.report.sentences.length > 0 && (
          <>
            <p>{checked.report.sentences.filter((s) => s.sayable).length} of {checked.report.sentences.length} sentences can stand.</p>
            <MarkedScript script={checked.script} sentences={checked.report.sentences} open={claim?.start ?? null} onOpen={setOpen} />
          </>
        )}
        {claim !== null && sentence !== null && <ClaimCard claim={claim} sentence={sentence} onReplace={(text) => replace(sentence, text)} />}
        {report !== null && report.cautions.length > 0 && (
          <section><h2>Cautions that go with it</h2><ul className="asks">{report.cautions.map((c) => <li key={c.id} data-severity="warning">{c.text} <span className="quiet">{c.source}</span></li>)}</ul></section>
        )}
        {report !== null && report.sheet.lines.length > 0 && <SheetPanel sheet={report.sheet} />}
      </section>
      <div className="beside-script">
        {report !== null && report.notChecked === null && <div className="column"><HoldsList holds={report.holds} /></div>}
        <OwnNotes onChanged={() => say.again()} />
      </div>
    </div>
  );
}
