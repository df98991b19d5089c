import { Parser, type Handler } from 'htmlparser2';

/** What a saved web page holds that matters for a recipe. */
export interface PageText {
  /** The visible text, a line a block. */
  readonly text: string;
  /** The contents of every `application/ld+json` script, as written. */
  readonly data: readonly string[];
}

const blocks = new Set(['p', 'div', 'li', 'ul', 'ol', 'br', 'tr', 'table', 'section', 'article', 'h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'dt', 'dd', 'figcaption', 'blockquote', 'hr', 'pre', 'main', 'label', 'option', 'title', 'body', 'td']);
const unseen = new Set(['script', 'style', 'noscript', 'template', 'svg', 'nav', 'footer', 'aside', 'form', 'button', 'select', 'iframe', 'head', 'object']);
const headings = new Set(['h1', 'h2', 'h3', 'h4', 'h5', 'h6']);
/** Elements that have no end tag: they never open a part that stays unseen. */
const empty = new Set(['br', 'hr', 'img', 'input', 'meta', 'link', 'wbr', 'source', 'area', 'base', 'col', 'embed', 'param', 'track']);

const deepest = 1_000;
const chunk = 16_384;

/** Takes a page apart. Streams, so that depth costs nothing; broken mark-up is read as far as it goes. */
export function readPage(html: string): PageText {
  const parts: string[] = [];
  const data: string[] = [];
  let hidden = 0;
  let script: string[] | null = null;
  let depth = 0;
  const handler: Partial<Handler> = {
    onopentag(name, attributes) {
      depth++;
      if (name === 'script' && /^application\/ld\+json\b/i.test((attributes['type'] ?? '').trim())) script = [];
      if (unseen.has(name) && !empty.has(name)) hidden++;
      if (blocks.has(name)) parts.push('\n');
      if (name === 'li' && hidden === 0) parts.push('• ');
      if (headings.has(name) && hidden === 0) parts.push(name === 'h1' ? '\n# ' : '\n');
    },
    ontext(text) {
      if (script) script.push(text);
      else if (hidden === 0) parts.push(text.replace(/\s+/g, ' '));
    },
    onclosetag(name) {
      depth--;
      if (name === 'script' && script) {
        data.push(script.join(''));
        script = null;
      }
      if (unseen.has(name) && hidden > 0) hidden--;
      if (blocks.has(name)) parts.push('\n');
    },
  };
  const open = (): Parser => new Parser(handler, { decodeEntities: true, lowerCaseTags: true });
  let parser = open();
  for (let from = 0; from < html.length; ) {
    // The parser's cost grows with the depth of open elements; a page nested beyond all sense goes on in a fresh one.
    if (depth > deepest && script === null) {
      parser.end();
      parser = open();
      depth = 0;
    }
    const cut = from + chunk >= html.length ? html.length : html.indexOf('<', from + chunk);
    const to = cut < 0 ? html.length : cut;
    parser.write(html.slice(from, to));
    from = to;
  }
  parser.end();
  return { text: parts.join('').split('\n').map((line) => line.trim()).filter((line) => line !== '' && line !== '•').join('\n'), data };
}

/** The text of a scrap of mark-up: "&frac12; cup <b>milk</b>" → "½ cup milk". Text without mark-up comes back as it is. */
export function plainText(scrap: string): string {
  return /[<&]/.test(scrap) ? readPage(scrap).text.replace(/^• /gm, '') : scrap;
}
