import type { Matrix, ReaderWeights } from '../../core/statements/index.ts';

interface PackedMatrix {
  readonly rows: number;
  readonly width: number;
  /** One factor a row (float32, little endian) and whole numbers from -127 to 127 (int8), both in base64. */
  readonly scales: string;
  readonly values: string;
}

interface PackedDirection {
  readonly input: PackedMatrix;
  readonly state: PackedMatrix;
  readonly bias: string;
}

export interface PackedReader {
  readonly words: string;
  readonly signs: readonly string[];
  readonly hidden: number;
  readonly tables: readonly {
    readonly words: PackedMatrix; readonly signs: PackedMatrix; readonly grams: PackedMatrix;
    readonly layers: readonly { readonly forward: PackedDirection; readonly backward: PackedDirection }[];
    readonly out: PackedMatrix; readonly outBias: string; readonly follow: string; readonly first: string; readonly last: string;
  }[];
}

function floats(base64: string): Float32Array {
  const bytes = new Uint8Array(Buffer.from(base64, 'base64'));
  return new Float32Array(bytes.buffer, 0, bytes.length / 4);
}

function unpacked({ rows, width, scales, values }: PackedMatrix): Matrix {
  const factors = floats(scales);
  const whole = new Int8Array(new Uint8Array(Buffer.from(values, 'base64')).buffer);
  const out = new Float32Array(rows * width);
  for (let r = 0; r < rows; r++) for (let k = r * width; k < (r + 1) * width; k++) out[k] = (whole[k] ?? 0) * (factors[r] ?? 0);
  return { rows, width, values: out };
}

const numbered = (names: readonly string[]): Map<string, number> => new Map(names.map((name, i) => [name, i]));

/** Unpacks the fitted readers of claims (data/statements/claim-reader.json). */
export function unpackReaders({ words, signs, hidden, tables: all }: PackedReader): ReaderWeights[] {
  const direction = (d: PackedDirection): ReaderWeights['layers'][number]['forward'] => ({ input: unpacked(d.input), state: unpacked(d.state), bias: floats(d.bias) });
  const names = { words: numbered(words.split(' ')), signs: numbered(signs), hidden };
  return all.map((tables) => ({
    ...names,
    wordRows: unpacked(tables.words), signRows: unpacked(tables.signs), gramRows: unpacked(tables.grams),
    layers: tables.layers.map(({ forward, backward }) => ({ forward: direction(forward), backward: direction(backward) })),
    out: unpacked(tables.out), outBias: floats(tables.outBias), follow: floats(tables.follow), first: floats(tables.first), last: floats(tables.last),
  }));
}
