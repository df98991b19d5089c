import type { FoodMatch } from '../foods/index.ts';
import type { Interval } from '../quantity/index.ts';
import type { Amount, Finding, IngredientLine, StatedMeasure } from './recipe.ts';
import { countStep, foodNames, startWith, weighContext, type WeighContext, type WeighSettings, type WeighTables } from './weigh-context.ts';
import { drainedStep, weighCount, weighLength } from './weigh-count.ts';
import { combinedSpread, spreadOf, times, weightRange, type Estimate, type WeighStep } from './weigh-estimate.ts';
import { weighFruit } from './weigh-fruit.ts';
import { withoutRefuse } from './weigh-refuse.ts';
import { weighVolume } from './weigh-volume.ts';
import { fits } from './weighing-rules.ts';

/**
 * The weight of one line. `grams` is the edible part as it goes into the pot, with the range in
 * which 8 of 10 cooks' pots would lie; null when nothing tells it, which is not nothing.
 * `gross` is the weight before peel and bone came off.
 */
export interface Weighing {
  readonly grams: Interval | null;
  readonly gross: Interval | null;
  /** The factors, one list an amount: the factors of a list multiply to its grams, the lists add up. */
  readonly paths: readonly (readonly WeighStep[])[];
  /** Sure of the weight, 0 to 1. */
  readonly confidence: number;
  readonly findings: readonly Finding[];
}

const confidenceOfScale = 0.98;
// No cook counts further; such a number is a slip or an attack, and sums must stay finite.
const mostCounted = 1e6;
// A weight in these needs no explaining.
const metricWeights = new Set(['g', 'kg', 'mg']);
const containers = new Set(['tin', 'jar']);

function measureStep(context: WeighContext, kind: 'stated-each' | 'stated-total', measure: StatedMeasure, gramsAUnit: { value: number; source: string; locator: string }): WeighStep {
  const { rules } = context.tables;
  const pack = kind === 'stated-each' && context.amount.unit !== null;
  const spread = combinedSpread(spreadOf(measure.quantity), pack ? rules.spreads.container.value : rules.spreads.weighed.value);
  return { kind, data: { count: measure.quantity.value, unit: measure.unit }, factor: measure.quantity.value * gramsAUnit.value, unit: 'g', spread, source: gramsAUnit.source, locator: gramsAUnit.locator };
}

/** A weight or measure that the line states for one unit or for all of them. */
function weighStated(context: WeighContext, kind: 'stated-each' | 'stated-total', measure: StatedMeasure): Estimate | null {
  const { tables, settings, amount } = context;
  const unit = tables.units.find(measure.unit);
  const size = unit ? tables.units.size(unit.id, settings.measures) : null;
  if (!unit || !size) return null;
  const count = kind === 'stated-each' ? amount.quantity : { low: 1, value: 1, high: 1 };
  if (unit.kind === 'mass') {
    const start = startWith(countStep(context, 'amount', count), 'gross', confidenceOfScale);
    const stated = times(start, measureStep(context, kind, measure, size));
    const tinned = amount.unit !== null && containers.has(amount.unit);
    const drained = tinned ? drainedStep(context) : null;
    return drained ? times({ ...stated, basis: 'net' }, drained) : stated;
  }
  const quantity: Interval = { low: count.low * measure.quantity.low, value: count.value * measure.quantity.value, high: count.high * measure.quantity.high };
  if (unit.kind === 'volume') return weighVolume(context, unit.id, quantity);
  return unit.kind === 'length' ? weighLength(context, unit.id, quantity) : null;
}

function weighMass(context: WeighContext, unit: string): Estimate | null {
  const size = context.tables.units.size(unit, context.settings.measures);
  if (!size) return null;
  const weighed = context.tables.rules.spreads.weighed;
  if (metricWeights.has(unit)) {
    const { quantity, text } = context.amount;
    const spread = combinedSpread(spreadOf(quantity), weighed.value);
    return startWith({ kind: 'stated-weight', data: { text, unit }, factor: quantity.value * size.value, unit: 'g', spread, source: null, locator: null }, 'gross', confidenceOfScale);
  }
  const start = startWith(countStep(context, 'amount'), 'gross', confidenceOfScale);
  return times(start, { kind: 'unit-size', data: { unit }, factor: size.value, unit: 'g', spread: weighed.value, source: size.source, locator: size.locator });
}

/** Whether a second weight only says the first again in other units ("150 g / 5 oz"); a much smaller one is that of the prepared food. */
function sameWeight(context: WeighContext, total: StatedMeasure): boolean {
  const { tables, settings, amount } = context;
  const one = tables.units.size(amount.unit ?? '', settings.measures)?.value ?? 0;
  const other = tables.units.size(total.unit, settings.measures)?.value ?? 0;
  const ratio = (total.quantity.value * other) / Math.max(1e-9, amount.quantity.value * one);
  return ratio > 0.85 && ratio < 1.18;
}

/** Estimates of one amount, before refuse; more than one where a fruit gives juice and zest. Empty when nothing tells the weight. */
function weighAmount(context: WeighContext): readonly Estimate[] {
  const { amount, tables } = context;
  const one = (estimate: Estimate | null): readonly Estimate[] => (estimate ? [estimate] : []);
  const first = tables.units.find(amount.unit ?? '');
  const again = amount.total && first?.kind === 'mass' && tables.units.find(amount.total.unit)?.kind === 'mass' && sameWeight(context, amount.total);
  const total = amount.total && !again ? weighStated(context, 'stated-total', amount.total) : null;
  if (total) return [total];
  const each = amount.each ? weighStated(context, 'stated-each', amount.each) : null;
  if (each) return [each];
  const unit = tables.units.find(amount.unit ?? 'piece');
  if (!unit || unit.id === 'some') return [];
  if (unit.kind === 'mass') return one(weighMass(context, unit.id));
  if (unit.kind === 'count') return weighFruit(context) ?? one(weighCount(context, unit.id));
  // A hand measure may have a weight of its own: a handful of kale, a knob of butter, a thumb of ginger.
  const byHand = unit.vague ? weighCount(context, unit.id) : null;
  if (byHand) return [byHand];
  return one(unit.kind === 'volume' ? weighVolume(context, unit.id) : weighLength(context, unit.id));
}

const isStated = (context: WeighContext): boolean => context.amount.each !== null || context.amount.total !== null || context.tables.units.find(context.amount.unit ?? '')?.kind === 'mass';

/** What is usual where no amount stands: salt, pepper and oil. */
function usualAmount(line: IngredientLine, match: FoodMatch, tables: WeighTables, settings: WeighSettings): Weighing {
  const food = match.code === null ? null : tables.foods.find(match.code);
  const rule = tables.rules.noAmount.find((usual) => (usual.remark === null || line.remarks.includes(usual.remark)) && fits(usual, foodNames(line, match, food)));
  const name = match.entry?.name ?? line.food.name;
  if (!rule) {
    return { grams: null, gross: null, paths: [], confidence: 0, findings: [{ code: 'no-amount', lineId: line.id, data: { name }, severity: 'warning' }] };
  }
  const servings = settings.servings ?? tables.rules.servingsUnsaid;
  const start = startWith({ kind: 'servings', data: { servings }, factor: servings, unit: '1', spread: 0, source: null, locator: null }, 'net', 0.4);
  const estimate = times(start, { kind: 'usual-amount', data: {}, factor: rule.gramsAServing, unit: 'g', spread: rule.spread, source: rule.source, locator: rule.locator });
  const grams = weightRange(estimate.grams, estimate.spread);
  const finding: Finding = { code: 'usual-amount', lineId: line.id, data: { name, grams: Math.round(estimate.grams * 10) / 10, servings }, severity: 'note' };
  return { grams, gross: grams, paths: [estimate.steps], confidence: estimate.confidence, findings: [finding] };
}

function sum(estimates: readonly Estimate[]): Interval {
  const value = estimates.reduce((total, e) => total + e.grams, 0);
  const half = Math.hypot(...estimates.map((e) => e.grams * e.spread));
  return weightRange(value, value > 0 ? half / value : 0);
}

function absurd(line: IngredientLine, grams: number, at: { match: FoodMatch; tables: WeighTables; settings: WeighSettings }): Finding[] {
  const { match, tables, settings } = at;
  const food = match.code === null ? null : tables.foods.find(match.code);
  const servings = settings.servings ?? tables.rules.servingsUnsaid * 3;
  const rule = tables.rules.mostAServing.find((most) => fits(most, foodNames(line, match, food)));
  if (!rule || grams <= rule.grams * servings) return [];
  return [{ code: 'absurd-amount', lineId: line.id, data: { name: match.entry?.name ?? line.food.name, grams: Math.round(grams), servings: settings.servings ?? 0, text: line.amount?.text ?? '' }, severity: 'question' }];
}

/**
 * Turns the amounts of a line into grams. A stated weight comes first, then what the kitchen
 * names and the tables say of a piece or a spoonful, then what is usual. An amount that cannot
 * be weighed gives null and a finding, never 0; one far beyond a plateful is kept and asked about.
 */
export function weighLine(line: IngredientLine, match: FoodMatch, tables: WeighTables, settings: WeighSettings): Weighing {
  const amounts: readonly Amount[] = [...(line.amount ? [line.amount] : []), ...line.more];
  const given = amounts.filter((a) => a.unit !== 'some' && a.quantity.value > 0 && a.quantity.value <= mostCounted);
  if (given.length === 0) return usualAmount(line, match, tables, settings);
  const before: Estimate[] = [];
  const after: Estimate[] = [];
  const findings: Finding[] = [];
  for (const amount of given) {
    const context = weighContext({ line, amount, match }, tables, settings);
    const estimates = weighAmount(context);
    if (estimates.length === 0) {
      findings.push({ code: 'no-weight', lineId: line.id, data: { name: match.entry?.name ?? line.food.name, text: amount.text, unit: amount.unit ?? 'piece' }, severity: 'warning' });
    }
    before.push(...estimates);
    after.push(...estimates.map((estimate) => withoutRefuse(context, estimate, isStated(context))));
  }
  if (after.length === 0) return { grams: null, gross: null, paths: [], confidence: 0, findings };
  const grams = sum(after);
  const confidence = Math.min(...after.map((e) => e.confidence)) * (findings.length > 0 ? 0.5 : 1);
  return { grams, gross: sum(before), paths: after.map((e) => e.steps), confidence, findings: [...findings, ...absurd(line, grams.value, { match, tables, settings })] };
}
