import { foldWord, readHousehold, readWords, type BulkDensity } from '../foods/index.ts';
import { countStep, startWith, type WeighContext } from './weigh-context.ts';
import { times, type Estimate, type WeighStep } from './weigh-estimate.ts';
import { fits, type Figure, type UsualDensity } from './weighing-rules.ts';

// Words for one and the same filling of a spoon or cup.
const alike: readonly (readonly string[])[] = [
  ['chopped', 'diced', 'cubed', 'cube', 'piece', 'chunk', 'dice'],
  ['grated', 'shredded'],
  ['sliced', 'slice', 'ring'],
  ['mashed', 'pureed', 'puree'],
  ['crumbled', 'crushed', 'crumb'],
  ['ground', 'powder', 'powdered', 'milled'],
  ['halved', 'half'],
];
const otherFormSpread = 0.15;
const otherStateSpread = 0.15;
const confidences = { kitchen: 0.92, table: 0.88, usual: 0.5 };

const stateWordsOf = (text: string): string[] => readWords(text).parts.flat().map(foldWord);

/** Words of the line with those that mean the same filling. */
function widened(words: ReadonlySet<string>): ReadonlySet<string> {
  const out = new Set(words);
  for (const group of alike) {
    const folded = group.map(foldWord);
    if (folded.some((w) => words.has(w))) for (const w of folded) out.add(w);
  }
  return out;
}

interface DensityChoice {
  readonly step: WeighStep;
  readonly confidence: number;
}

/** How well a state given in the data suits the line: every word of it stands in the line, or it is the plain one. */
function stateScore(states: readonly string[], words: ReadonlySet<string>, wide: ReadonlySet<string>): number {
  if (states.length === 0) return 1;
  if (states.every((w) => words.has(w))) return 3;
  if (states.every((w) => wide.has(w))) return 2.5;
  return states.some((w) => wide.has(w)) ? 1.5 : 0;
}

function kitchenDensity(context: WeighContext, evenOfOtherForm: boolean): DensityChoice | null {
  const densities = context.match.entry?.densities ?? [];
  // Loosely packed is as the spoon or cup is filled anyway.
  const loose = context.words.has('loosely') || context.words.has('lightly');
  const said = loose ? new Set([...context.words].filter((word) => word !== 'packed')) : context.words;
  const wide = widened(said);
  const { form, entry } = context.match;
  // A density without a form is that of the usual form.
  const formScore = (d: BulkDensity): number => (d.form === form ? 1.2 : d.form === null && form === entry?.usual ? 0.8 : d.form === null ? -2 : -3);
  const score = (d: BulkDensity): number => formScore(d) + stateScore(stateWordsOf(d.state), said, wide);
  const best = [...densities].sort((a, b) => score(b) - score(a))[0];
  if (!best) return null;
  const otherForm = formScore(best) < 0;
  if (otherForm && !evenOfOtherForm) return null;
  const otherState = stateScore(stateWordsOf(best.state), said, wide) < 1;
  const spread = best.spread + (otherForm ? otherFormSpread : 0) + (otherState ? otherStateSpread : 0);
  return {
    step: { kind: 'kitchen-density', data: { state: best.state, name: context.match.entry?.name ?? '' }, factor: best.gramsAMillilitre, unit: 'g/ml', spread, source: best.source, locator: best.locator },
    confidence: confidences.kitchen * (otherForm ? 0.8 : 1) * (otherState ? 0.9 : 1),
  };
}

function tableDensity(context: WeighContext): DensityChoice | null {
  const { food, tables, words } = context;
  if (!food) return null;
  const wide = widened(words);
  const read = food.household.flatMap((measure) => {
    const reading = readHousehold(measure.text);
    const ml = reading?.kind === 'volume' && !reading.isYield ? tables.rules.tableMeasures[reading.unit] : undefined;
    return reading && ml ? [{ measure, reading, density: measure.grams / (reading.count * ml.value), score: stateScore(reading.states, words, wide) }] : [];
  });
  const best = read.sort((a, b) => b.score - a.score)[0];
  if (!best) return null;
  const spread = tables.rules.spreads.household.value + (best.score < 1 ? otherStateSpread : 0);
  return {
    step: { kind: 'table-density', data: { text: best.measure.text, grams: best.measure.grams, code: food.code }, factor: best.density, unit: 'g/ml', spread, source: food.table, locator: `${food.code}: ${best.measure.text}` },
    confidence: confidences.table * (best.score < 1 ? 0.85 : 1),
  };
}

function usualDensity(context: WeighContext): UsualDensity | null {
  return context.tables.rules.densities.find((rule) => fits(rule, context.names)) ?? null;
}

/** Grams in a millilitre: the kitchen's own figure for the form and state, else the table's household weight, else the kitchen's for another form, else what is usual for such foods. */
export function densityOf(context: WeighContext): DensityChoice | null {
  const near = kitchenDensity(context, false) ?? tableDensity(context) ?? kitchenDensity(context, true);
  if (near) return near;
  const usual = usualDensity(context);
  if (!usual) return null;
  return {
    step: { kind: 'usual-density', data: { group: context.names.group }, factor: usual.value, unit: 'g/ml', spread: usual.spread, source: usual.source, locator: usual.locator },
    confidence: usual.fluid ? 0.8 : confidences.usual,
  };
}

/** Whether the food is poured: a heaped spoon of it is no more than a full one. */
function isFluid(context: WeighContext): boolean {
  const form = context.match.form;
  return form === 'juice' || form === 'oil' || usualDensity(context)?.fluid === true;
}

/** How full the measure is: "a heaped tablespoon", "a scant cup", "a good handful". Null when the line does not say. */
export function fillStep(context: WeighContext, soft: boolean): WeighStep | null {
  const { fill } = context.amount;
  if (fill === null || fill === 'level') return null;
  const { rules } = context.tables;
  const figure: Figure = soft ? rules.softFills[fill] : rules.fills[fill];
  return { kind: 'fill', data: { fill }, factor: figure.value, unit: '1', spread: figure.spread, source: figure.source, locator: figure.locator };
}

/** An amount in spoons, cups, millilitres or hand measures; null when nothing tells how heavy the food is. */
export function weighVolume(context: WeighContext, unit: string, quantity = context.amount.quantity): Estimate | null {
  const { tables, settings } = context;
  const size = tables.units.size(unit, settings.measures);
  const density = densityOf(context);
  if (!size || !density) return null;
  const vague = tables.units.find(unit)?.vague ?? false;
  const measured = tables.rules.spreads.measured;
  const start = startWith(countStep(context, 'amount', quantity), 'net', vague ? 0.7 : 1);
  const sized = times(start, { kind: 'unit-size', data: { unit }, factor: size.value, unit: 'ml', spread: Math.max(size.spread, measured.value), source: size.source, locator: size.locator });
  const fill = fillStep(context, vague || isFluid(context));
  const filled = fill ? times(sized, fill) : sized;
  return times(filled, density.step, { confidence: density.confidence });
}
