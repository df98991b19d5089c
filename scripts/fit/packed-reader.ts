import type { FittedDirection, FittedReader, FittedTable } from './reader-program.ts';

const base64 = (bytes: Float32Array | Int8Array): string => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64');
const most = 127;

/** A table with each row rounded to whole numbers from -127 to 127 and one factor: a quarter of the room. */
function packed({ rows, width, values }: FittedTable): { rows: number; width: number; scales: string; values: string } {
  const scales = new Float32Array(rows);
  const whole = new Int8Array(rows * width);
  for (let r = 0; r < rows; r++) {
    const row = values.subarray(r * width, (r + 1) * width);
    const scale = row.reduce((greatest, v) => Math.max(greatest, Math.abs(v)), 0) / most;
    scales[r] = scale;
    if (scale > 0) row.forEach((v, j) => (whole[r * width + j] = Math.round(v / scale)));
  }
  return { rows, width, scales: base64(scales), values: base64(whole) };
}

const packedDirection = ({ input, state, bias }: FittedDirection): { input: ReturnType<typeof packed>; state: ReturnType<typeof packed>; bias: string } => ({ input: packed(input), state: packed(state), bias: base64(bias) });

/** The tables of data/statements/claim-reader.json. */
export function packedTables({ words, signs, grams, layers, out, outBias, follow, first, last }: FittedReader): object {
  return {
    words: packed(words), signs: packed(signs), grams: packed(grams),
    layers: layers.map(({ forward, backward }) => ({ forward: packedDirection(forward), backward: packedDirection(backward) })),
    out: packed(out), outBias: base64(outBias), follow: base64(follow), first: base64(first), last: base64(last),
  };
}
