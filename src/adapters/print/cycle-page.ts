import type { CycleReport } from '../../app/cycle-report.ts';
import { basisText, boundReason, flagText, forecastText, noForecastText, notForContraception, notMedicine, plainFoodAdvice, ratingAnswers, referralLines, urgencyNames } from '../../messages/cycle.ts';
import { longDay } from '../../messages/days.ts';
import { cyclePictures } from './cycle-pictures.ts';
import { xml, type Picture } from './svg.ts';

const style = `body{font:15px/1.5 system-ui,sans-serif;color:#20261f;max-width:60rem;margin:2rem auto;padding:0 1rem}figure{margin:1.5rem 0;overflow-x:auto;break-inside:avoid}figcaption{font-size:14px;margin-bottom:.4rem}table{border-collapse:collapse;font-size:13px}th,td{text-align:left;padding:.15rem .6rem;border-bottom:1px solid #d5dad2}summary{cursor:pointer}.first{border-left:4px solid #9a5b13;padding-left:1rem}@media print{details{display:none}body{margin:0}}`;

function pictureHtml(picture: Picture): string {
  const { table } = picture;
  const row = (cells: readonly string[], cell: 'th' | 'td'): string => `<tr>${cells.map((c) => `<${cell}${cell === 'th' ? ' scope="col"' : ''}>${xml(c)}</${cell}>`).join('')}</tr>`;
  return `<figure><figcaption>${xml(picture.caption)}</figcaption>${picture.svg}<details><summary>The same as a table</summary><table><caption>${xml(table.caption)}</caption><thead>${row(table.head, 'th')}</thead><tbody>${table.rows.map((r) => row(r, 'td')).join('')}</tbody></table></details></figure>`;
}

/** A page to read or print: forecast, pictures with tables, criteria. Self-contained, loads nothing. */
export function cyclePage(report: CycleReport, options: { usual: { shortest: number; longest: number }; crisisLine: string }): string {
  const urgent = report.flags.filter((f) => f.urgency === 'now' || f.urgency === 'soon');
  const milder = report.flags.filter((f) => !urgent.includes(f));
  const list = (items: readonly string[]): string => `<ul>${items.map((i) => `<li>${xml(i)}</li>`).join('')}</ul>`;
  const flagLine = (f: (typeof report.flags)[number]): string => `${urgencyNames[f.urgency]}: ${flagText(f)} (${f.source}: ${f.locator})`;
  const forecast = report.forecast ? [basisText(report), ...report.forecast.starts.map((s, i) => `${['Next start', 'The one after', 'The third'][i] ?? 'Then'}: ${forecastText(s)}.`), `Ovulation in this cycle: ${forecastText(report.forecast.ovulation)}. A range, not a day.`] : [noForecastText(report)];
  const parts = [
    `<h1>Cycle record, ${xml(longDay(report.today))}</h1>`,
    urgent.length > 0 ? `<section class="first"><h2>Please read first</h2>${list(urgent.map(flagLine))}${urgent.some((f) => f.id === 'severe-mood') ? `<p>${xml(options.crisisLine)}</p>` : ''}</section>` : '',
    `<h2>Forecast</h2>${list(forecast)}<p><strong>${xml(notForContraception)}</strong> ${xml(notMedicine)}</p>`,
    report.bounds.plain ? `<h2>Food</h2><p>${xml(plainFoodAdvice)}</p>${list(report.bounds.rules.map((r) => `Because of ${boundReason(r.id)}: ${referralLines[r.refer]}`))}` : '',
    ...cyclePictures(report, options.usual).map(pictureHtml),
    milder.length > 0 ? `<h2>For a doctor, by published criteria</h2>${list(milder.map(flagLine))}` : '',
    report.ratings.answer === 'no-ratings' ? '' : `<h2>Day notes</h2><p>${xml(ratingAnswers[report.ratings.answer])}</p>`,
  ];
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Cycle record</title><style>${style}</style></head><body><main>${parts.join('\n')}</main></body></html>\n`;
}
