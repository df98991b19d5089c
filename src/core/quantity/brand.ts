declare const unit: unique symbol;

/** A number that carries its unit in its type. Made only in this room. */
export type Branded<U extends string> = number & { readonly [unit]: U };

export type Grams = Branded<'g'>;
export type Milligrams = Branded<'mg'>;
export type Micrograms = Branded<'µg'>;
export type Millilitres = Branded<'ml'>;
export type Kilocalories = Branded<'kcal'>;
export type Kilojoules = Branded<'kJ'>;
export type Minutes = Branded<'min'>;
export type Celsius = Branded<'°C'>;
export type Centimetres = Branded<'cm'>;
/** A share between 0 and 1. */
export type Share = Branded<'1'>;
