/** How many buckets the pieces of words fall into. */
export const gramBucketCount = 4096;
const most = 60;

/** FNV-1a (G. Fowler, L. Noll, K.-P. Vo) over the characters `from` to `to` of a text, stirred once more. */
function bucketOf(text: string, from: number, to: number): number {
  let hash = 0x811c9dc5;
  for (let i = from; i < to; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  hash ^= hash >>> 15;
  hash = Math.imul(hash, 0x2c1b3c6d);
  hash ^= hash >>> 12;
  return (hash >>> 0) % gramBucketCount;
}

/** The buckets of a word and of its pieces of three and four letters, ends marked: unknown words are known by their pieces ("-itis", "dys-"). */
export function gramBuckets(word: string): number[] {
  const text = `<${word}>`;
  const buckets = [bucketOf(text, 0, text.length)];
  for (const size of [3, 4]) for (let i = 0; i + size <= text.length && size < text.length && buckets.length < most; i++) buckets.push(bucketOf(text, i, i + size));
  return buckets;
}
