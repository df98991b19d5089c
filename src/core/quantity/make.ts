import { assert } from '../../errors.ts';
import type { Branded, Celsius, Centimetres, Grams, Kilocalories, Kilojoules, Micrograms, Milligrams, Millilitres, Minutes, Share } from './brand.ts';

function make<U extends string>(value: number, name: U): Branded<U> {
  assert(Number.isFinite(value), `${name} wants a finite number, got ${value}`);
  return value as Branded<U>;
}

/** A finite number read as that unit. Throws on NaN and infinities: those are bugs upstream. */
export const grams = (value: number): Grams => make(value, 'g');
export const milligrams = (value: number): Milligrams => make(value, 'mg');
export const micrograms = (value: number): Micrograms => make(value, 'µg');
export const millilitres = (value: number): Millilitres => make(value, 'ml');
export const kilocalories = (value: number): Kilocalories => make(value, 'kcal');
export const kilojoules = (value: number): Kilojoules => make(value, 'kJ');
export const minutes = (value: number): Minutes => make(value, 'min');
export const celsius = (value: number): Celsius => make(value, '°C');
export const centimetres = (value: number): Centimetres => make(value, 'cm');

/** A share from 0 to 1; small rounding noise outside is pulled in. */
export function share(value: number): Share {
  assert(value > -1e-9 && value < 1 + 1e-9, `a share lies between 0 and 1, got ${value}`);
  return Math.min(1, Math.max(0, value)) as Share;
}
