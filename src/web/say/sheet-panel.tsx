import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { TalkSheet } from '../../app/say-report.ts';

/** The text to publish, and line by line what was changed and how it was read. */
export function SheetPanel({ sheet }: { readonly sheet: TalkSheet }) {
  const [copied, setCopied] = useState(false);
  return (
    <section aria-labelledby="sheet-title">
      <h2 id="sheet-title">Text for publication</h2>
      <pre className="sheet" tabIndex={0} role="region" aria-label="The text for publication">{sheet.description}</pre>
      <div className="row-actions">
        <Button onPress={() => { void navigator.clipboard.writeText(sheet.description).then(() => setCopied(true)); }}>Copy the text</Button>
        <span role="status" className="quiet">{copied ? 'Copied.' : ''}</span>
      </div>
      <details className="sheet-lines">
        <summary>Talk sheet, line by line</summary>
        <ol>
          {sheet.lines.map((line) => (
            <li key={line.text}>
              {[line.text, ...line.beside].join(' ')}
              {line.changedFrom !== null && <p className="quiet">In place of: {line.changedFrom}</p>}
              {line.reading.map((words) => <p key={words} className="quiet">{words}</p>)}
            </li>
          ))}
        </ol>
      </details>
    </section>
  );
}
