import { AppError } from '../../errors.ts';
import type { LifeStage } from './life-stage.ts';

/** Who set the figure: `nasem` (North America), `efsa` (European Union), `eu-label` (the values printed on EU and UK labels). */
export type IntakeAuthority = 'nasem' | 'efsa' | 'eu-label';

/**
 * An amount a day that is enough for nearly all (RDA, PRI), or thought enough (AI), or the
 * figure on labels (NRV, RI), in the nutrient's own unit.
 */
export interface ReferenceIntake {
  readonly authority: IntakeAuthority;
  readonly stage: string;
  readonly nutrient: string;
  readonly amount: number;
  readonly kind: string;
  readonly source: string;
  readonly locator: string;
  readonly checked: string;
  readonly note: string | null;
}

export interface ReferenceIntakes {
  readonly stages: readonly LifeStage[];
  readonly intakes: readonly ReferenceIntake[];
}

/** Which authorities have figures for a stage, in a fixed order. Throws `unknown-life-stage`. */
export function authoritiesFor(tables: ReferenceIntakes, stage: string): IntakeAuthority[] {
  if (!tables.stages.some((s) => s.id === stage)) throw new AppError('unknown-life-stage', { stage, known: tables.stages.map((s) => s.id).join(', ') });
  const order: IntakeAuthority[] = ['nasem', 'efsa', 'eu-label'];
  return order.filter((authority) => tables.intakes.some((i) => i.stage === stage && i.authority === authority));
}

/** The intakes of one authority for one stage, keyed by nutrient. Throws `unknown-life-stage`. */
export function intakesFor(tables: ReferenceIntakes, stage: string, authority: IntakeAuthority): ReadonlyMap<string, ReferenceIntake> {
  if (!authoritiesFor(tables, stage).includes(authority)) throw new AppError('unknown-life-stage', { stage, authority });
  return new Map(tables.intakes.filter((i) => i.stage === stage && i.authority === authority).map((i) => [i.nutrient, i]));
}
