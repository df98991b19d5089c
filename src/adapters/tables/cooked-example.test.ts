import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cookLine, portionInterval, publishedRow, type Treatment } from '../../core/dish/index.ts';
import { readCookedTables } from './cooked.ts';
import { packageFolder } from './folder.ts';
import { readFoodTable } from './foods.ts';

const page = readFileSync(join(packageFolder(), 'docs', 'how-a-cooked-value-is-worked-out.md'), 'utf8');
const says = (text: string): void => expect(page).toContain(text);

describe('the example of docs/how-a-cooked-value-is-worked-out.md', () => {
  const tables = readCookedTables();
  const spinach = readFoodTable().foods.find((food) => food.name === 'Spinach, raw')!;
  const treatment: Treatment = { lineId: 'l1', method: 'boiled-drained', minutes: { low: 12, value: 12, high: 12 }, liquid: 'drained', lid: null, alreadyCooked: false, stages: [], why: ['step'] };
  const line = cookLine({ lineId: 'l1', food: spinach, grams: { low: 180, value: 200, high: 220 }, treatment }, tables);
  const potassium = line.values.get('potassium')!;

  it('states the factors of both sources and the one used', () => {
    expect(potassium.rawPer100g).toBe(558);
    expect(publishedRow(tables.published, spinach, 'boiled-drained')).toMatchObject({ code: '3005', kept: { potassium: 0.85 } });
    expect(potassium.kept).toMatchObject({ used: { kind: 'fitted' }, other: { kind: 'published', share: 0.85 }, why: 'better-on-held-out-families' });
    says(`kept, fitted: boiled leafy greens | ${(100 * potassium.kept.share.value).toFixed(1)} %`);
    const { error } = tables.fitted.nutrients.get('potassium')!;
    says(`missed by ${(100 * error.fitted).toFixed(1)} % on foods it had not seen, the published one by ${(100 * error.published).toFixed(1)} %`);
  });
  it('states the amounts, the weight and the range', () => {
    says(`1,116 × ${potassium.kept.share.value.toFixed(3)} = ${potassium.amount.value.toFixed(0)} mg`);
    says(`weight: ${line.weightYield!.value} g drained from each gram | ${(200 * line.weightYield!.value).toFixed(0)} g`);
    const { deviation } = potassium;
    says(`differs by ${(100 * deviation.composition).toFixed(1)} % (one standard deviation), the weight by ${(100 * deviation.weight).toFixed(1)} %, the factor by ${(100 * deviation.factor).toFixed(1)} %`);
    const { interval, doubts } = portionInterval([{ lineId: 'l1', amount: potassium.amount.value, deviation }], { share: 0.5, deviation: 0 });
    says(`954 ÷ 2 = ${interval.value.toFixed(0)} mg`);
    says(`**${interval.low.toFixed(0)} to ${interval.high.toFixed(0)} mg** a portion`);
    expect(doubts.map((doubt) => doubt.kind)).toEqual(['factor', 'composition', 'weight']);
    expect(doubts[0]!.share).toBeGreaterThan(0.5);
  });
});
