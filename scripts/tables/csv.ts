/** Reads comma-separated text (RFC 4180): quoted fields, doubled quotes, CRLF or LF. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!;
    if (quoted) {
      if (c !== '"') field += c;
      else if (text[i + 1] === '"') field += text[++i];
      else quoted = false;
    } else if (c === '"' && field === '') quoted = true;
    else if (c === ',') {
      row.push(field);
      field = '';
    } else if (c === '\n' || c === '\r') {
      if (c === '\r' && text[i + 1] === '\n') i++;
      row.push(field);
      rows.push(row);
      row = [];
      field = '';
    } else field += c;
  }
  if (field !== '' || row.length > 0) rows.push([...row, field]);
  return rows.filter((r) => r.length > 1 || r[0] !== '');
}

/** Rows of a CSV file as records keyed by the header line; lines that start with # are comments. */
export function readCsvRecords(text: string): Record<string, string>[] {
  const [header, ...rows] = readCsv(text.split(/\r?\n/).filter((line) => !line.startsWith('#')).join('\n'));
  if (!header) return [];
  return rows.map((row, i) => {
    if (row.length !== header.length) throw new Error(`row ${i + 2} has ${row.length} fields, the header has ${header.length}: ${row.join(',')}`);
    return Object.fromEntries(header.map((name, j) => [name, row[j]!]));
  });
}
