import { describe, expect, it } from 'vitest';
import { unpackReaders, type PackedReader } from '../../src/adapters/tables/claim-reader.ts';
import { packedTables } from './packed-reader.ts';
import type { FittedReader, FittedTable } from './reader-program.ts';

const table = (rows: number, width: number): FittedTable => ({ rows, width, values: Float32Array.from({ length: rows * width }, (_, i) => Math.sin(i) * (1 + (i % 7))) });
const way = { input: table(4, 8), state: table(2, 8), bias: Float32Array.of(1, -2, 3, 0, 0.25, 0, 0, 1) };
const reader: FittedReader = {
  words: table(3, 2), signs: table(1, 1), grams: { rows: 2, width: 2, values: Float32Array.of(0, 0, 0.5, -0.25) }, layers: [{ forward: way, backward: way }],
  out: table(4, 3), outBias: Float32Array.of(1, 2, 3), follow: Float32Array.of(1, -1, 0.5), first: Float32Array.of(0), last: Float32Array.of(7.5),
};

describe('the tables of the claim reader as they are packed', () => {
  const [unpacked] = unpackReaders({ words: 'a b', signs: ['is word'], hidden: 2, tables: [packedTables(reader) as PackedReader['tables'][number]] });
  it('come back to within half of a 127th of the greatest of their row', () => {
    const back = unpacked?.layers[0]?.forward.input;
    expect(back?.rows).toBe(4);
    for (let r = 0; r < 4; r++) {
      const row = way.input.values.subarray(8 * r, 8 * r + 8);
      const most = Math.max(...row.map(Math.abs));
      row.forEach((v, j) => expect(Math.abs((back?.values[8 * r + j] ?? NaN) - v)).toBeLessThanOrEqual(most / 127 / 2 + 1e-6));
    }
  });
  it('keep a row of zeros, and numbers that are not rounded', () => {
    expect([...(unpacked?.gramRows.values.subarray(0, 2) ?? [])]).toEqual([0, 0]);
    expect(unpacked?.layers[0]?.backward.bias).toEqual(way.bias);
    expect(unpacked?.last).toEqual(reader.last);
  });
});
