import { useState } from 'react';
import { Button, FileTrigger, Input, Label, TextField } from 'react-aria-components';
import { editScheme, noAdvice, ownExperience, readScheme, type Scheme, type SchemeEdit, type SchemeRule } from '../../core/scheme/index.ts';
import { noTrialFound } from '../../messages/cycle.ts';
import { adviceText, schemeProblemText } from '../../messages/scheme.ts';
import { saveFile } from './cycle-api.ts';
import { RuleForm } from './rule-form.tsx';

const edge = ({ anchor, day }: SchemeRule['window']['from']): string => (anchor === 'period-start' ? `day ${day}` : anchor === 'ovulation' ? (day === 0 ? 'ovulation' : `${Math.abs(day)} ${day < 0 ? 'before' : 'after'} ovulation`) : `${Math.abs(day)} before the next period`);

function newRule(scheme: Scheme): SchemeRule {
  let n = scheme.rules.length + 1;
  while (scheme.rules.some((r) => r.id === `rule-${n}`)) n += 1;
  return { id: `rule-${n}`, title: 'New rule', window: { from: { anchor: 'next-period', day: -7 }, to: { anchor: 'next-period', day: -1 }, stretch: 'fixed' }, fixedDays: null, advice: noAdvice, evidence: 'experience', source: ownExperience };
}

/** The author's fixed days hold only for the window they were written for. */
function withFixedDays(before: SchemeRule, now: SchemeRule): SchemeRule {
  return JSON.stringify(before.window) === JSON.stringify(now.window) ? now : { ...now, fixedDays: null };
}

/** The practitioner's own rules: changed here, kept as a file of hers. A change that would break the scheme is refused with the reason. */
export function SchemeEditor({ scheme, onChange }: { readonly scheme: Scheme; readonly onChange: (scheme: Scheme) => void }) {
  const [open, setOpen] = useState<string | null>(null);
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const apply = (edit: SchemeEdit): boolean => {
    const { scheme: next, problems } = editScheme(scheme, edit);
    setTroubles(problems.map(schemeProblemText));
    if (next) onChange(next);
    return next !== null;
  };
  const openFile = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    try {
      const { scheme: read, problems } = readScheme(JSON.parse(await file.text()));
      setTroubles(problems.map(schemeProblemText));
      if (read) onChange(read);
    } catch {
      setTroubles(['That file is not a scheme saved from here (JSON). The rules on screen are as they were.']);
    }
  };
  return (
    <section className="scheme-editor" aria-label="Phase rules">
      <TextField value={scheme.name} onChange={(name) => apply({ kind: 'rename', name: name === '' ? ' ' : name, about: scheme.about })}><Label>Name of the scheme</Label><Input /></TextField>
      <ol className="rule-list">
        {scheme.rules.map((rule, i) => (
          <li key={rule.id}>
            <div className="rule-face">
              <div><strong>{rule.title}</strong> <span className="quiet">{edge(rule.window.from)} to {edge(rule.window.to)}</span><br />{adviceText(rule.advice) || 'says nothing yet'}</div>
              <div className="row-actions">
                <Button className="plain" onPress={() => setOpen(open === rule.id ? null : rule.id)} aria-expanded={open === rule.id}>Change</Button>
                <Button className="plain" isDisabled={i === 0} onPress={() => apply({ kind: 'move-rule', id: rule.id, to: i - 1 })}>Up</Button>
                <Button className="plain" onPress={() => apply({ kind: 'remove-rule', id: rule.id })}>Remove</Button>
              </div>
            </div>
            {open === rule.id && <RuleForm rule={rule} onKeep={(kept) => { if (apply({ kind: 'put-rule', rule: withFixedDays(rule, kept) })) setOpen(null); }} onLeave={() => setOpen(null)} />}
          </li>
        ))}
      </ol>
      {troubles.length > 0 && <div className="trouble" role="alert">{troubles.map((t) => <p key={t}>{t}</p>)}</div>}
      <div className="row-actions">
        <Button className="plain" onPress={() => { const rule = newRule(scheme); if (apply({ kind: 'put-rule', rule })) setOpen(rule.id); }}>Add a rule</Button>
        <Button className="plain" onPress={() => saveFile(`${scheme.id}.json`, new Blob([JSON.stringify(scheme, null, 2)], { type: 'application/json' }))}>Save the scheme as a file</Button>
        <FileTrigger acceptedFileTypes={['application/json', '.json']} onSelect={(files) => void openFile(files?.[0])}><Button className="plain">Open a scheme file</Button></FileTrigger>
      </div>
      <p className="quiet">{noTrialFound}</p>
    </section>
  );
}
