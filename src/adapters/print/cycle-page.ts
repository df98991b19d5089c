import type { CycleReport } from '../../app/cycle-report.ts';
import { cycleWords } from '../../messages/cycle-words.ts';
import { longDay } from '../../messages/days.ts';
import { cyclePictures } from './cycle-pictures.ts';
import { xml, type Picture } from './svg.ts';

const style = `body{font:15px/1.5 system-ui,sans-serif;color:#15211f;max-width:60rem;margin:2rem auto;padding:0 1rem}figure{margin:1.5rem 0;overflow-x:auto;break-inside:avoid}figcaption{font-size:14px;margin-bottom:.4rem}table{border-collapse:collapse;font-size:13px}th,td{text-align:left;padding:.15rem .6rem;border-bottom:1px solid #d8e0dd}summary{cursor:pointer}.first{border-left:4px solid #a9491f;padding-left:1rem}@media print{details{display:none}body{margin:0}}`;

function pictureHtml(picture: Picture): string {
  const { table } = picture;
  const row = (cells: readonly string[], cell: 'th' | 'td'): string => `<tr>${cells.map((c) => `<${cell}${cell === 'th' ? ' scope="col"' : ''}>${xml(c)}</${cell}>`).join('')}</tr>`;
  return `<figure><figcaption>${xml(picture.caption)}</figcaption>${picture.svg}<details><summary>The same as a table</summary><table><caption>${xml(table.caption)}</caption><thead>${row(table.head, 'th')}</thead><tbody>${table.rows.map((r) => row(r, 'td')).join('')}</tbody></table></details></figure>`;
}

/** A page to read or print: forecast, pictures with tables, days, criteria. Self-contained, loads nothing. */
export function cyclePage(report: CycleReport, options: { usual: { shortest: number; longest: number }; crisisLine: string }): string {
  const words = cycleWords(report, options.crisisLine);
  const list = (items: readonly string[]): string => `<ul>${items.map((i) => `<li>${xml(i)}</li>`).join('')}</ul>`;
  const section = (title: string, items: readonly string[]): string => (items.length === 0 ? '' : `<h2>${xml(title)}</h2>${list(items)}`);
  const dayTable = words.rules.length === 0 || words.plain ? '' : `<h2>Day by day</h2><table><thead><tr><th scope="col">Day</th><th scope="col">Likely phases</th><th scope="col">Advice</th><th scope="col">In fixed days</th></tr></thead><tbody>${words.days.map((d) => `<tr><td>${xml(d.long)}</td><td>${xml(d.phases)}</td><td>${xml(d.advice)}</td><td>${xml(d.fixed)}</td></tr>`).join('')}</tbody></table>${list([...words.rules.map((r) => `${r.title}: ${r.text}. Evidence: ${r.evidence}.`), ...words.schemeNotes])}`;
  const parts = [
    `<h1>Cycle record, ${xml(longDay(report.today))}</h1>`,
    words.urgent.length > 0 ? `<section class="first">${section('Please read first', [...words.urgent, ...(words.crisisLine ? [words.crisisLine] : [])])}</section>` : '',
    `${section('Forecast', words.forecast)}<p><strong>${xml(words.warning)}</strong></p>`,
    words.plain ? section('Food', words.plain) : '',
    ...cyclePictures(report, options.usual).map(pictureHtml),
    dayTable,
    section('About the record', [...words.questions.map((q) => q.text), ...words.notes]),
    section('For a doctor, by published criteria', words.milder),
    section('Day notes', words.dayNotes),
  ];
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Cycle record</title><style>${style}</style></head><body><main>${parts.join('\n')}</main></body></html>\n`;
}
