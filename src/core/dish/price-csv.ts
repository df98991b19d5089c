import { readIsoDate } from '../calendar/index.ts';
import type { PriceRow } from './price-list.ts';

const columns = ['food', 'pack', 'price', 'shop', 'date'] as const;

export interface CsvFault {
  /** Row of the file, the heading is row 1. */
  readonly row: number;
  readonly code: 'no-heading' | 'missing-column' | 'bad-price' | 'bad-date' | 'no-food' | 'no-pack';
  readonly text: string;
}

/** Cells of a CSV text (RFC 4180); a semicolon or a tab separates where the heading has more of them than commas. */
export function csvRows(text: string): string[][] {
  const heading = text.slice(0, text.search(/\r?\n|$/));
  const separator = [',', ';', '\t'].reduce((best, mark) => (heading.split(mark).length > heading.split(best).length ? mark : best));
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  for (let i = text.startsWith('\ufeff') ? 1 : 0; i < text.length; i++) {
    const c = text.charAt(i);
    if (quoted) {
      if (c !== '"') cell += c;
      else if (text.charAt(i + 1) === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (c === '"' && cell.trim() === '') {
      quoted = true;
      cell = '';
    } else if (c === separator) {
      rows.at(-1)!.push(cell);
      cell = '';
    } else if (c === '\n' || c === '\r') {
      if (c === '\r' && text.charAt(i + 1) === '\n') i++;
      rows.at(-1)!.push(cell);
      cell = '';
      rows.push([]);
    } else cell += c;
  }
  rows.at(-1)!.push(cell);
  return rows.filter((row) => row.some((value) => value.trim() !== ''));
}

/** A price as people write it: "2.50", "2,50", "£2.50", "1,250.00"; null when it is none. */
export function readPrice(text: string): number | null {
  const bare = text.replace(/[^\d.,-]/g, '');
  const decimal = /^-?\d{1,3}(?:[.,]\d{3})+[.,]\d{1,2}$/.test(bare) ? bare.replace(/[.,](?=\d{3})/g, '') : bare;
  const value = /^\d+(?:[.,]\d{1,4})?$/.test(decimal) ? Number(decimal.replace(',', '.')) : Number.NaN;
  return value > 0 && value < 1e6 ? value : null;
}

/** Reads a price list. Rows that cannot be used come back as faults with their row; the good ones are kept. */
export function readPriceCsv(text: string, id: (row: number) => string): { readonly rows: PriceRow[]; readonly faults: CsvFault[] } {
  const [heading, ...body] = csvRows(text);
  const names = (heading ?? []).map((h) => h.trim().toLowerCase());
  const missing = columns.filter((c) => !names.includes(c));
  if (missing.length > 0) return { rows: [], faults: missing.map((column) => ({ row: 1, code: names.length < 2 ? 'no-heading' : 'missing-column', text: column })) };
  const rows: PriceRow[] = [];
  const faults: CsvFault[] = [];
  body.forEach((cells, i) => {
    // An apostrophe before a sign that a spreadsheet would run is ours: writePriceCsv puts it there.
    const cell = (name: (typeof columns)[number]): string => (cells[names.indexOf(name)] ?? '').trim().replace(/^'(?=[=+\-@])/, '');
    const row = i + 2;
    const price = readPrice(cell('price'));
    if (cell('food') === '') faults.push({ row, code: 'no-food', text: '' });
    else if (cell('pack') === '') faults.push({ row, code: 'no-pack', text: cell('food') });
    else if (price === null) faults.push({ row, code: 'bad-price', text: cell('price') });
    else if (readIsoDate(cell('date')) === null) faults.push({ row, code: 'bad-date', text: cell('date') });
    else rows.push({ id: id(row), food: cell('food'), pack: cell('pack'), price, shop: cell('shop'), date: cell('date') });
  });
  return { rows, faults };
}

/** A cell of a CSV file; text that a spreadsheet would run as a formula gets an apostrophe before it. */
function csvCell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
}

/** The price list as CSV, as it is read again. */
export function writePriceCsv(rows: readonly PriceRow[]): string {
  return [columns.join(','), ...rows.map((r) => [r.food, r.pack, String(r.price), r.shop, r.date].map(csvCell).join(','))].join('\r\n') + '\r\n';
}
