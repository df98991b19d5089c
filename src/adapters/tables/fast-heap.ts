import { plainHeap, type NumberHeap } from '../../core/statements/index.ts';

// add-product.wat assembled.
const code = [
  'AGFzbQEAAAABCQFgBX9/f39/AAIQAQRoZWFwBm1lbW9yeQIAAQMCAQAHDgEKYWRkUHJvZHVjdAAACuACAd0CAgV/BXsgAkUEQA8LIARBAnQhBSAAIAVqIQYCQANAIABBwABqIAZKDQEgAP0ABAAhCyAA/QAEECEM',
  'IAD9AAQgIQ0gAP0ABDAhDiACIQcgAyEIIAEhCQNAIAn9CQIAIQogCyAKIAj9AAQA/eYB/eQBIQsgDCAKIAj9AAQQ/eYB/eQBIQwgDSAKIAj9AAQg/eYB/eQBIQ0gDiAKIAj9AAQw/eYB/eQBIQ4gCCAFaiEIIAlB',
  'BGohCSAHQQFrIgcNAAsgACAL/QsEACAAIAz9CwQQIAAgDf0LBCAgACAO/QsEMCAAQcAAaiEAIANBwABqIQMMAAsLAkADQCAAIAZODQEgAP0ABAAhCyACIQcgAyEIIAEhCQNAIAsgCf0JAgAgCP0ABAD95gH95AEh',
  'CyAIIAVqIQggCUEEaiEJIAdBAWsiBw0ACyAAIAv9CwQAIABBEGohACADQRBqIQMMAAsLCw==',
].join('');

const bytesPerNumber = 4;
const bytesPerPage = 65_536;
type AddProduct = (...places: [sum: number, vector: number, count: number, rows: number, width: number]) => void;

/** As much of the WebAssembly interface (W3C) as is used here; the types of Node 20 leave it out. */
interface Assembly {
  validate(bytes: Uint8Array): boolean;
  readonly Memory: new (size: { initial: number }) => { readonly buffer: ArrayBuffer };
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object, imports: object) => { readonly exports: { readonly addProduct: AddProduct } };
}
const { WebAssembly: assembly } = globalThis as unknown as { readonly WebAssembly?: Assembly };

/** A heap whose product works on four numbers at a time, about ten times as fast as plain script; plain where the engine cannot. */
export function fastHeap(size: number): NumberHeap {
  const bytes = new Uint8Array(Buffer.from(code, 'base64'));
  if (!assembly?.validate(bytes)) return plainHeap(size);
  const memory = new assembly.Memory({ initial: Math.ceil((size * bytesPerNumber) / bytesPerPage) });
  const { addProduct } = new assembly.Instance(new assembly.Module(bytes), { heap: { memory } }).exports;
  return {
    numbers: new Float32Array(memory.buffer, 0, size),
    addProduct: (sum, vector, count, { at, width }) => addProduct(sum * bytesPerNumber, vector * bytesPerNumber, count, at * bytesPerNumber, width),
  };
}
