import { Button } from 'react-aria-components';
import type { DeskOptions } from '../../app/desk.ts';
import type { LineReport } from '../../app/dish-report.ts';
import { gramsText, percent } from '../../messages/numbers.ts';
import { LineEditor } from './line-editor.tsx';
import type { DishState } from './use-dish.ts';

const sureness = (line: LineReport): 'sure' | 'fair' | 'doubtful' => (line.food.code === null || line.gramsG === null || line.confidence < 0.45 ? 'doubtful' : line.confidence < 0.75 ? 'fair' : 'sure');
const signs = { sure: '', fair: '~', doubtful: '?' };
const meanings = { sure: 'read without doubt', fair: 'read with some doubt', doubtful: 'please look at this line' };

function Line({ line, open, onOpen, dish, options }: { readonly line: LineReport; readonly open: boolean; readonly onOpen: (key: string | null) => void; readonly dish: DishState; readonly options: DeskOptions }) {
  const sure = sureness(line);
  return (
    <li className="line" data-sure={sure} data-left={line.eatenShare === 0 || undefined} data-open={open || undefined}>
      <Button className="line-face" aria-expanded={open} onPress={() => onOpen(open ? null : line.key)}>
        <span className="line-grams">{line.gramsG === null ? 'weight?' : gramsText(line.gramsG.value)}</span>
        <span className="line-words">
          <span className="line-text">{line.text}</span>
          <span className="line-food">
            {line.food.nearness === 'near' && <abbr title="a near relative of the food stands in">≈ </abbr>}
            {line.food.tableName ?? 'no food in the tables: no data'}
            {line.corrected.length > 0 && <span className="tag">put right by you</span>}
            {line.eatenShare < 1 && <span className="tag">{line.eatenShare === 0 ? 'not eaten' : `${percent(line.eatenShare)} eaten`}</span>}
          </span>
        </span>
        <span className="line-sign" title={meanings[sure]} aria-label={meanings[sure]}>{signs[sure]}</span>
      </Button>
      {[...(line.food.note === null ? [] : [line.food.note]), ...line.findings.map((f) => f.text)].map((text) => <p className="line-note" key={text}>{text}</p>)}
      {open && <LineEditor key={line.key} line={line} dish={dish} options={options} onDone={() => onOpen(null)} />}
    </li>
  );
}

/** The lines as read: grams, food and sureness; each opens for its path and to be put right. */
export function LineList({ dish, options, open, onOpen }: { readonly dish: DishState; readonly options: DeskOptions; readonly open: string | null; readonly onOpen: (key: string | null) => void }) {
  const lines = dish.report?.lines ?? [];
  const sections = [...new Set(lines.map((l) => l.section))];
  const asks = dish.report?.findings.filter((f) => f.lineId === null) ?? [];
  return (
    <>
      <div className="column-head">
        <h2 id="lines-title">As read</h2>
        <span className="quiet">{lines.length === 0 ? '' : `${lines.length} lines · ${gramsText(dish.report?.pot.rawWeightG ?? 0)} into the pot`}</span>
      </div>
      {dish.trouble !== null && <p className="trouble" role="alert">{dish.trouble}</p>}
      {asks.length > 0 && <ul className="asks" aria-label="To look at">{asks.map((f) => <li key={f.code + f.text} data-severity={f.severity}>{f.text}</li>)}</ul>}
      {lines.length === 0 && dish.trouble === null && <p className="quiet">Nothing read yet. The lines appear here as you type.</p>}
      {sections.map((section) => (
        <div key={section ?? ''}>
          {section !== null && <h3 className="section-name">{section}</h3>}
          <ul className="line-list">
            {lines.filter((l) => l.section === section).map((line) => (
              <Line key={line.key} line={line} open={open === line.key} onOpen={onOpen} dish={dish} options={options} />
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}
