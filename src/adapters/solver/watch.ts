/** A watch that says when so many milliseconds are over, for searches that have no clock of their own. */
export function watch(milliseconds: number): () => boolean {
  const end = performance.now() + milliseconds;
  return () => performance.now() >= end;
}
