/** How many boxes the pieces of words fall into. */
export const gramBoxes = 4096;
const most = 60;

/** FNV-1a (G. Fowler, L. Noll, K.-P. Vo) over the characters `from` to `to` of a text, stirred once more. */
function boxOf(text: string, from: number, to: number): number {
  let hash = 0x811c9dc5;
  for (let i = from; i < to; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  hash ^= hash >>> 15;
  hash = Math.imul(hash, 0x2c1b3c6d);
  hash ^= hash >>> 12;
  return (hash >>> 0) % gramBoxes;
}

/** The boxes of a word and of its pieces of three and four letters, ends marked: unknown words are known by their pieces ("-itis", "dys-"). */
export function gramBuckets(word: string): number[] {
  const text = `<${word}>`;
  const boxes = [boxOf(text, 0, text.length)];
  for (const size of [3, 4]) for (let i = 0; i + size <= text.length && size < text.length && boxes.length < most; i++) boxes.push(boxOf(text, i, i + size));
  return boxes;
}
