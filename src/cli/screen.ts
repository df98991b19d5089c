export interface Screen {
  readonly width: number;
  readonly colour: boolean;
}

/** Bold and dim only: they need no meaning of colour and live with any theme. */
export function paint(text: string, style: 'bold' | 'dim', screen: Screen): string {
  if (!screen.colour) return text;
  return `\u001b[${style === 'bold' ? 1 : 2}m${text}\u001b[22m`;
}

const marks = /\p{Mark}/u;
const wide = /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Extended_Pictographic}/u;

/** How many columns a text takes. */
export function columns(text: string): number {
  let count = 0;
  for (const c of text) count += marks.test(c) ? 0 : wide.test(c) ? 2 : 1;
  return count;
}

export function pad(text: string, width: number, side: 'left' | 'right' = 'left'): string {
  const space = ' '.repeat(Math.max(0, width - columns(text)));
  return side === 'left' ? text + space : space + text;
}

export function clip(text: string, width: number): string {
  if (columns(text) <= width) return text;
  let out = '';
  for (const c of text) {
    if (columns(out + c) > width - 1) break;
    out += c;
  }
  return `${out}…`;
}

export function wrap(text: string, width: number): string[] {
  const out: string[] = [];
  let row = '';
  for (const word of text.split(/\s+/)) {
    if (row !== '' && columns(row) + 1 + columns(word) > width) {
      out.push(row);
      row = word;
    } else row = row === '' ? word : `${row} ${word}`;
  }
  return [...out, row];
}

/** A share as a bar of eighths; above a whole it ends in an arrow. */
export function bar(share: number, width: number): string {
  const eighths = Math.max(0, Math.min(width * 8, Math.round(share * width * 8)));
  const full = Math.floor(eighths / 8);
  const rest = ['', '▏', '▎', '▍', '▌', '▋', '▊', '▉'][eighths % 8] ?? '';
  const text = '█'.repeat(full) + rest;
  const shown = share > 1.005 ? `${'█'.repeat(width - 1)}▶` : text;
  return shown + '·'.repeat(Math.max(0, width - columns(shown)));
}
