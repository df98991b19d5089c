import { countStep, startWith, type WeighContext } from './weigh-context.ts';
import { times, type Estimate, type WeighStep } from './weigh-estimate.ts';
import { densityOf } from './weigh-volume.ts';
import type { Figure, FruitYield } from './weighing-rules.ts';

const confidence = 0.75;

function yieldOf(context: WeighContext): FruitYield | null {
  const names = new Set(context.names.names);
  return context.tables.rules.fruits.find(({ food }) => names.has(food) || names.has(`${food} juice`) || names.has(`${food} zest`)) ?? null;
}

function figureStep(kind: 'fruit-juice' | 'fruit-zest', figure: Figure, food: string): WeighStep {
  return { kind, data: { food }, factor: figure.value, unit: kind === 'fruit-juice' ? 'ml' : 'g', spread: figure.spread, source: figure.source, locator: figure.locator };
}

/** "Juice of 1 lemon", "zest of 2 limes": what the counted fruits give; null when the line is not of that kind. */
export function weighFruit(context: WeighContext): readonly Estimate[] | null {
  const { form } = context.match;
  const fruit = form === 'juice' || form === 'peel' ? yieldOf(context) : null;
  if (!fruit) return null;
  const start = startWith(countStep(context, 'amount'), 'net', confidence);
  const { size } = context.amount;
  const figure = size === null ? null : context.tables.rules.fruitSizes[size];
  const sized = figure && figure.value !== 1 ? times(start, { kind: 'size', data: { size: size ?? '' }, factor: figure.value, unit: '1', spread: figure.spread, source: figure.source, locator: figure.locator }) : start;
  const out: Estimate[] = [];
  const both = context.line.remarks.includes('juice-and-zest');
  if (form === 'juice' && fruit.juiceMl) {
    const density = densityOf(context);
    const juice = times(sized, figureStep('fruit-juice', fruit.juiceMl, fruit.food));
    if (density) out.push(times(juice, density.step));
  }
  if ((form === 'peel' || both) && fruit.zestG) out.push(times(sized, figureStep('fruit-zest', fruit.zestG, fruit.food)));
  return out.length > 0 ? out : null;
}
