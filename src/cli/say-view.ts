import type { SayClaim, SayReport, SaySentence } from '../app/say-report.ts';
import { bar, pad, paint, wrap, type Screen } from './screen.ts';

function indented(text: string, by: number, screen: Screen): string[] {
  return wrap(text, Math.max(20, screen.width - by)).map((part) => `${' '.repeat(by)}${part}`);
}

function claimRows(claim: SayClaim, screen: Screen): string[] {
  const out = [`  ${paint(`${claim.sign} “${claim.span}”`, 'bold', screen)}  ${claim.className}, ${claim.polarityName}`];
  out.push(...indented(claim.readAs, 6, screen).map((row) => paint(row, 'dim', screen)));
  if (claim.unsure !== null) out.push(...indented(`? ${claim.unsure}`, 6, screen));
  const differ = new Set(claim.laws.map((law) => law.reasons.join())).size > 1;
  for (const law of claim.laws) {
    out.push(`      ${pad(law.lawName, 16)} ${law.sign} ${law.words}`);
    if (differ) for (const reason of law.reasons) out.push(...indented(reason, 8, screen));
  }
  const [first] = claim.laws;
  if (!differ) for (const reason of first?.reasons ?? []) out.push(...indented(reason, 6, screen));
  for (const law of claim.laws) for (const words of law.beside) out.push(...indented(`Beside it must stand: “${words}”`, 6, screen));
  for (const text of [...new Set([...(first?.figures ?? []), ...claim.laws.flatMap((law) => law.figures)])].slice(0, 3)) out.push(...indented(text, 8, screen).map((row) => paint(row, 'dim', screen)));
  const clauses = [...new Set(claim.laws.flatMap((law) => law.clauses))];
  if (clauses.length > 0) out.push(...indented(`By ${clauses.join('; ')}`, 8, screen).map((row) => paint(row, 'dim', screen)));
  for (const rewrite of claim.rewrites) out.push(...indented(`Say instead: ${rewrite}`, 6, screen));
  return out;
}

function sentenceRows(sentence: SaySentence, screen: Screen): string[] {
  const mark = sentence.claims.length === 0 ? '·' : sentence.sayable ? '●' : '✎';
  const out = [...indented(`${mark} ${sentence.text}`, 0, screen)];
  for (const claim of sentence.claims) out.push(...claimRows(claim, screen));
  for (const note of sentence.evidence) {
    out.push(...indented(`Evidence (${note.gradeName}): ${note.finding}${note.dose === null ? '' : ` ${note.dose}`}`, 6, screen));
    out.push(...indented(`${note.citation}${note.doi === null ? '' : `, doi ${note.doi}`}; ${note.checked}`, 8, screen).map((row) => paint(row, 'dim', screen)));
  }
  for (const caution of sentence.cautions) out.push(...indented(`! ${caution}`, 6, screen));
  return out;
}

/** A checked script as a terminal page. */
export function sayView(report: SayReport, screen: Screen): string {
  if (report.notChecked !== null) return `${report.notChecked}\n`;
  const out = [paint(report.title, 'bold', screen), `Checked for: ${report.laws.map((l) => l.name).join(', ')}.`, ...(report.compared === null ? [] : indented(report.compared.words, 0, screen))];
  const claims = report.sentences.flatMap((s) => s.claims);
  const fine = report.sentences.filter((s) => s.sayable).length;
  if (report.sentences.length > 0) out.push(`${bar(fine / report.sentences.length, 16)} ${fine} of ${report.sentences.length} sentences can stand; ${claims.length} claims were found.`);
  out.push('');
  for (const sentence of report.sentences) out.push(...sentenceRows(sentence, screen), '');
  for (const law of report.holds) {
    out.push(paint(`What holds of this dish: ${law.name}`, 'bold', screen));
    if (law.claims.length === 0) out.push('  No nutrition claim holds for sure or on the estimate.');
    if (law.claims.length > 0) for (const words of law.beside) out.push(...indented(`Beside any of these must stand: “${words}”`, 2, screen));
    for (const claim of law.claims) out.push(...indented(`${claim.sure ? '●' : '◐'} ${claim.words}${claim.sure ? '' : ' (on the estimate, not for sure)'}${claim.figures[0] === undefined ? '' : `: ${claim.figures[0]}`}`, 2, screen));
    for (const claim of law.health.slice(0, 8)) out.push(...indented(`${claim.sure ? '●' : '◐'} ${claim.sentence}`, 4, screen));
    if (law.health.length > 8) out.push(`    and ${law.health.length - 8} more permitted wordings`);
    out.push('');
  }
  if (report.cautions.length > 0) {
    out.push(paint('Cautions that go with it', 'bold', screen));
    for (const caution of report.cautions) out.push(...indented(`! ${caution.text}`, 2, screen));
    out.push('');
  }
  if (report.sheet.lines.length > 0) {
    out.push(paint('Talk sheet', 'bold', screen));
    for (const line of report.sheet.lines) out.push(...indented(`${[line.text, ...line.beside].join(' ')}${line.notes.length > 0 ? ` [${line.notes.slice(0, 6).join(', ')}]` : ''}`, 2, screen), ...line.reading.flatMap((words) => indented(words, 4, screen)).map((row) => paint(row, 'dim', screen)));
    out.push('', ...report.sheet.footnotes.flatMap((text, i) => indented(`${i + 1}. ${text}`, 2, screen)).map((row) => paint(row, 'dim', screen)));
  }
  return `${out.join('\n')}\n`;
}
