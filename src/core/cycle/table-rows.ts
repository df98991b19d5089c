/** The separator of a table's header row: tab, semicolon or comma. */
export function tableDelimiter(header: string): string {
  return ['\t', ';', ','].find((d) => header.includes(d)) ?? ',';
}

/** The cells of one row; quotes may hold the separator and doubled quotes (RFC 4180). */
export function splitRow(line: string, delimiter: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < line.length; i += 1) {
    const c = line[i]!;
    if (quoted) {
      if (c === '"' && line[i + 1] === '"') {
        cell += '"';
        i += 1;
      } else if (c === '"') quoted = false;
      else cell += c;
    } else if (c === '"' && cell.trim() === '') {
      quoted = true;
      cell = '';
    } else if (c === delimiter) {
      cells.push(cell.trim());
      cell = '';
    } else cell += c;
  }
  cells.push(cell.trim());
  return cells;
}
