/** One price that she noted: this pack of this food cost this much in this shop on this day. */
export interface PriceRow {
  readonly id: string;
  /** The food in her words, read as an ingredient line would be. */
  readonly food: string;
  /** How much is in the pack, in her words: "500 g", "1 l", "6", "400 g tin". */
  readonly pack: string;
  /** In the currency of the list, above 0. */
  readonly price: number;
  readonly shop: string;
  /** YYYY-MM-DD. */
  readonly date: string;
}

/** A price row whose food and pack were found. Grams of the whole pack. */
export interface PricedFood {
  readonly row: PriceRow;
  readonly entryName: string | null;
  readonly form: string | null;
  readonly code: string | null;
  /** As bought, with peel and bone. */
  readonly grossG: number;
  /** What is left of it for the pot. */
  readonly edibleG: number;
}

export interface PriceProblem {
  readonly row: PriceRow;
  readonly code: 'food-not-known' | 'pack-not-known' | 'bad-price' | 'bad-date';
}

/** Price of an edible gram. */
export function pricePerGram(priced: PricedFood): number {
  return priced.row.price / priced.edibleG;
}
