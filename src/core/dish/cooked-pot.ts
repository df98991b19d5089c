import { isKnown, type Food } from '../foods/index.ts';
import { exactly, type Interval } from '../quantity/index.ts';
import { absorbsItsWater } from './retention.ts';
import { cookedFamily } from './cooked-family.ts';
import type { CookedLine } from './cooked-line.ts';
import type { CookedTables } from './cooked-tables.ts';
import type { CookingMethod, Heat } from './recipe.ts';
import type { Treatment, TreatmentStage } from './treatment.ts';

/** Where the weight of a line goes: into the common pot with its liquid, or by its own yield. */
export interface LineWeight {
  readonly lineId: string;
  readonly gramsIn: number;
  /** Null in a common pot: there only the whole has a weight. */
  readonly gramsOut: Interval | null;
}

/** The dish as it comes off the heat. */
export interface CookedPot {
  /** Whole dish, grams: as measured, or estimated. */
  readonly cookedGrams: Interval;
  readonly from: 'measured' | 'estimated';
  /** The estimate, also where she measured. */
  readonly estimatedGrams: Interval;
  /** Water that left a pot whose liquid is eaten, grams. */
  readonly evaporatedGrams: Interval;
  /** True when the estimate met the bound: more water would have left than the pot can lose. */
  readonly boiledNearlyDry: boolean;
  readonly lines: readonly LineWeight[];
  readonly volumeMl: Interval;
}

export interface PotToWeigh {
  readonly lines: readonly { readonly cooked: CookedLine; readonly treatment: Treatment; readonly eaten: Interval }[];
  /** Foods without data still weigh: grams that go in and stay. */
  readonly otherGrams: number;
  readonly measuredGrams: number | null;
  readonly panWidthCm: number | null;
}

type PotLineIn = PotToWeigh['lines'][number];

const waterOf = (food: Food): number => {
  const value = food.value('water');
  return isKnown(value) ? value.per100g / 100 : 0;
};
const isLiquid = (food: Food): boolean => ['liquids', 'dairy'].includes(cookedFamily(food)) || waterOf(food) > 0.93;

const lidByCustom: Partial<Record<CookingMethod, boolean>> = { stewed: true, 'pressure-cooked': true, poached: true };

function lidOn(stage: TreatmentStage, absorbing: boolean): boolean {
  return stage.lid ?? lidByCustom[stage.method] ?? absorbing;
}

function heatFactor(heat: Heat | null, tables: CookedTables): Interval {
  if (heat === 'boiling' || heat === 'high') return tables.parameters.evaporationBoiling;
  return heat === 'low' ? tables.parameters.evaporationLowHeat : exactly(1);
}

const product = (...all: readonly Interval[]): Interval => all.reduce((a, b) => ({ low: a.low * b.low, value: a.value * b.value, high: a.high * b.high }));
const sum = (...all: readonly Interval[]): Interval => all.reduce((a, b) => ({ low: a.low + b.low, value: a.value + b.value, high: a.high + b.high }), exactly(0));

/** Stretches over heat of the common pot, each counted once however many lines lie in it. */
function potStages(lines: readonly PotLineIn[]): { stage: TreatmentStage; absorbing: boolean }[] {
  const seen = new Map<string, { stage: TreatmentStage; absorbing: boolean }>();
  for (const { treatment, cooked } of lines) {
    for (const stage of treatment.stages) {
      if (stage.liquid !== 'kept' || stage.within) continue;
      const key = `${stage.step ?? `own ${stage.method}`} ${stage.verb ?? ''} ${stage.minutes?.value ?? ''}`;
      if (!seen.has(key)) seen.set(key, { stage, absorbing: absorbsItsWater(cooked.food) });
    }
  }
  return [...seen.values()];
}

function evaporation(lines: readonly PotLineIn[], panWidthCm: number | null, tables: CookedTables): { grams: Interval; bound: boolean } {
  const { parameters } = tables;
  const width = panWidthCm === null ? parameters.panWidth : exactly(panWidthCm);
  const area = { low: (Math.PI * width.low ** 2) / 4, value: (Math.PI * width.value ** 2) / 4, high: (Math.PI * width.high ** 2) / 4 };
  const steam = potStages(lines).map(({ stage, absorbing }) => {
    const minutes = stage.minutes ?? exactly(parameters.minutesUnsaid[stage.method]);
    const lid = lidOn(stage, absorbing) ? parameters.evaporationWithLid : exactly(1);
    // A lid keeps the pot at the simmer whatever the flame.
    const heat = lidOn(stage, absorbing) ? exactly(1) : heatFactor(stage.heat, tables);
    return product(parameters.evaporation, area, minutes, lid, heat);
  });
  const all = sum(...steam);
  const most = lines.reduce((total, { cooked, eaten }) => total + cooked.grams.value * eaten.value * waterOf(cooked.food), 0) * parameters.mostWaterLost.value;
  // Independent doubts partly cancel: the bounds of a product of ranges would be too wide.
  const narrow = { low: Math.sqrt(all.low * all.value), value: all.value, high: Math.sqrt(all.high * all.value) };
  return { grams: { low: Math.min(narrow.low, most), value: Math.min(narrow.value, most), high: Math.min(narrow.high, most) }, bound: all.value > most };
}

/** Weighs the dish after cooking: own yields for roasted, fried and drained lines, a water balance for the pot whose liquid is eaten. */
export function cookPot(pot: PotToWeigh, tables: CookedTables): CookedPot {
  const eaten = pot.lines.filter((line) => line.eaten.value > 0);
  const kept = eaten.filter(({ treatment }) => treatment.liquid === 'kept');
  const liquidListed = kept.some(({ cooked }) => isLiquid(cooked.food));
  const common = kept.filter(({ cooked }) => liquidListed || cooked.weightYield === null);
  const inCommon = new Set(common.map(({ cooked }) => cooked.lineId));
  const lines = eaten.map(({ cooked, eaten: share }): LineWeight => {
    const gramsIn = cooked.grams.value * share.value;
    if (inCommon.has(cooked.lineId)) return { lineId: cooked.lineId, gramsIn, gramsOut: null };
    const y = cooked.weightYield ?? exactly(1);
    const weight = { low: cooked.grams.low * share.value, value: gramsIn, high: cooked.grams.high * share.value };
    return { lineId: cooked.lineId, gramsIn, gramsOut: product(weight, y) };
  });
  const potIn = sum(...common.map(({ cooked, eaten: share }) => ({ low: cooked.grams.low * share.value, value: cooked.grams.value * share.value, high: cooked.grams.high * share.value })));
  const steam = evaporation(common, pot.panWidthCm, tables);
  const own = sum(...lines.flatMap((line) => (line.gramsOut ? [line.gramsOut] : [])));
  const value = own.value + potIn.value - steam.grams.value + pot.otherGrams;
  const spread = Math.hypot((own.high - own.low) / 2, (potIn.high - potIn.low) / 2, (steam.grams.high - steam.grams.low) / 2);
  const estimatedGrams = { low: Math.max(0, value - spread), value, high: value + spread };
  const cookedGrams = pot.measuredGrams === null ? estimatedGrams : exactly(pot.measuredGrams);
  const { density } = tables.parameters;
  return {
    cookedGrams,
    from: pot.measuredGrams === null ? 'estimated' : 'measured',
    estimatedGrams,
    evaporatedGrams: steam.grams,
    boiledNearlyDry: steam.bound,
    lines,
    volumeMl: { low: cookedGrams.low / density.high, value: cookedGrams.value / density.value, high: cookedGrams.high / density.low },
  };
}
