import type { LawId } from '../core/statements/index.ts';
import { allergenLine } from './allergen-line.ts';
import type { DishText } from './change-desk.ts';
import type { AllergenReport } from './change-report.ts';
import type { Desk } from './desk.ts';
import { plateOfDish, type PlateChoices } from './plate-of-dish.ts';
import { say } from './say.ts';
import type { SayReport } from './say-report.ts';
import { readOwnNotes, type StatementGround } from './statement-ground.ts';

/** What is asked when a script is held against a dish given as text. */
export interface SayAsk {
  readonly dish: DishText;
  /** The dish that "less" and "more" compare with; null when none was chosen. */
  readonly other: DishText | null;
  readonly script: string;
  readonly laws: readonly LawId[];
  /** Tags of the client or audience. */
  readonly client: readonly string[];
  /** Nutrients and topics that come first. */
  readonly theme: readonly string[];
  readonly plate: PlateChoices;
}

export interface SayTools {
  readonly desk: Desk;
  readonly ground: StatementGround;
  /** The allergens of a dish; without it the plate's own list is used. */
  readonly allergensOf?: (dish: DishText) => Promise<AllergenReport>;
  /** The day for which the law is asked. */
  readonly today: string;
}

/** Works the dish out and holds the script against it, with her own notes and the dish's allergen line: the same for every face. */
export async function sayDish({ dish, other, script, laws, client, theme, plate }: SayAsk, { desk, ground, allergensOf, today }: SayTools): Promise<SayReport> {
  const { rules, vocabulary } = ground;
  const report = await desk.workOut(dish.text, dish.choices);
  const against = other === null ? null : await desk.workOut(other.text, other.choices);
  const allergens = await allergensOf?.(dish);
  return say(
    { script, laws, client, emphasis: { nutrients: theme, topics: theme }, ownNotes: await readOwnNotes(desk.store.values), on: today },
    {
      plate: plateOfDish(report, rules.referenceAmounts, plate), other: against === null ? null : plateOfDish(against, rules.referenceAmounts),
      rules, vocabulary, allergenLine: allergens ? allergenLine(allergens) : null,
      dishCautions: report.cautions.map(({ id, text, source }) => ({ id, text, source })),
    },
  );
}
