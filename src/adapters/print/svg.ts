/** Text made safe for XML. */
export function xml(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

/** A picture with the table that says the same, for those who do not see it and for those who like figures. */
export interface Picture {
  readonly svg: string;
  /** What is drawn and how to read it, to stand above the picture. */
  readonly caption: string;
  readonly table: { readonly caption: string; readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

export interface Frame {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly text: string;
}

/** The inks of all cycle pictures: one dark, one earth, greys. Nothing is said by colour alone. */
export const inks = { dark: '#114b55', earth: '#a9491f', pale: '#e3ecea', line: '#8fa3a0', text: '#15211f' } as const;

/** A whole picture with its title and description for screen readers. */
export function picture(frame: Frame, body: readonly string[]): string {
  const { id, width, height, title, text } = frame;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="${id}-t ${id}-d" font-family="system-ui, sans-serif" font-size="12" fill="${inks.text}">`,
    `<title id="${id}-t">${xml(title)}</title>`,
    `<desc id="${id}-d">${xml(text)}</desc>`,
    ...body,
    '</svg>',
  ].join('\n');
}

/** A number for a coordinate. */
export const at = (n: number): string => String(Math.round(n * 10) / 10);

export function label(x: number, y: number, text: string, more = ''): string {
  return `<text x="${at(x)}" y="${at(y)}"${more ? ` ${more}` : ''}>${xml(text)}</text>`;
}
