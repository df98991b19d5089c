import { readCsvRecords } from '../scripts/tables/csv.ts';
import type { Woman } from './cycle-worlds.ts';

/** Column names are matched loosely: lower case, letters only. */
const plain = (text: string): string => text.toLowerCase().replace(/[^a-z]/g, '');

function columnFor(header: readonly string[], tests: readonly RegExp[]): string | null {
  for (const test of tests) {
    const found = header.find((name) => test.test(plain(name)));
    if (found !== undefined) return found;
  }
  return null;
}

/**
 * Real cycles as a CSV with the columns woman, cycle number, length, ovulation day (or empty).
 * Blank or impossible lengths end a run: what follows in that woman counts as a new run, so no
 * history is joined over a hole.
 */
export function readWomenCsv(text: string): Woman[] {
  const delimiter = (text.split('\n', 1)[0] ?? '').includes(';') ? ';' : ',';
  const records = readCsvRecords(delimiter === ';' ? text.replaceAll(';', ',') : text);
  const header = Object.keys(records[0] ?? {});
  const woman = columnFor(header, [/^woman/, /^(client|id|subject|person|participant|user)/]);
  const number = columnFor(header, [/^cycle(number|no|num|n|index)?$/, /number/]);
  const length = columnFor(header, [/^length/, /length(of)?cycle|cyclelength/, /length/]);
  const ovulation = columnFor(header, [/^ovulation/, /ovulation/]);
  if (!woman || !length) throw new Error(`The file needs the columns woman, cycle number, length, ovulation day; it has ${header.join(', ') || 'none'}.`);
  const byWoman = new Map<string, { number: number; length: number | null; ovulation: number | null }[]>();
  let last = '';
  records.forEach((record, i) => {
    last = record[woman]?.trim() || last;
    const value = Number(record[length]?.trim());
    const day = ovulation ? Number(record[ovulation]?.trim()) : 0;
    const rows = byWoman.get(last) ?? [];
    byWoman.set(last, rows);
    const usable = Number.isFinite(value) && value >= 10 && value <= 150;
    rows.push({ number: number ? Number(record[number]) || i : i, length: usable ? Math.round(value) : null, ovulation: usable && day >= 1 && day < value ? Math.round(day) : null });
  });
  const women: Woman[] = [];
  for (const [id, rows] of byWoman) {
    rows.sort((a, b) => a.number - b.number);
    let run: { length: number; ovulation: number | null }[] = [];
    let runs = 0;
    const close = (): void => {
      if (run.length > 0) women.push({ id: runs === 0 ? id : `${id} run ${runs + 1}`, lengths: run.map((r) => r.length), ovulations: run.map((r) => r.ovulation), written: run.map(() => true) });
      runs += run.length > 0 ? 1 : 0;
      run = [];
    };
    rows.forEach((row, i) => {
      const before = rows[i - 1];
      if (before && row.number - before.number > 1 && number) close();
      if (row.length === null) close();
      else run.push({ length: row.length, ovulation: row.ovulation });
    });
    close();
  }
  return women;
}
