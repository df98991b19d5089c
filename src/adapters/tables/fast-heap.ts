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

/** A heap whose product works on four numbers at a time, about ten times as fast as plain script; plain where the engine cannot. */
export function fastHeap(size: number): NumberHeap {
  const bytes = new Uint8Array(Buffer.from(code, 'base64'));
  if (!WebAssembly.validate(bytes)) return plainHeap(size);
  const memory = new WebAssembly.Memory({ initial: Math.ceil((size * bytesPerNumber) / bytesPerPage) });
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(bytes), { heap: { memory } });
  const product = exports['addProduct'] as AddProduct;
  return {
    numbers: new Float32Array(memory.buffer, 0, size),
    addProduct: (sum, vector, count, { at, width }) => product(sum * bytesPerNumber, vector * bytesPerNumber, count, at * bytesPerNumber, width),
  };
}
