import { day, daysBetween } from '../core/calendar/index.ts';
import { pricePerGram, type PriceRow } from '../core/dish/index.ts';
import { money, priceProblemText, priceStateText } from '../messages/change.ts';
import { gramsText } from '../messages/numbers.ts';
import type { CostReport, PriceListReport } from './change-report.ts';
import type { ChangeContext } from './change-tables.ts';
import { priceDish, type PriceList } from './price-dish.ts';
import type { WorkedDish } from './work-out-dish.ts';

/** What a dish costs, line by line and pack by pack. */
export function reportCost(dish: WorkedDish, context: ChangeContext): CostReport {
  const { currency, prices } = context.settings;
  const cost = priceDish(dish, prices);
  const textOf = new Map(dish.lines.map((l) => [l.line.id, l.line.text]));
  const least = cost.missing > 0 ? 'at least ' : '';
  const gaps = [
    ...(cost.missing > 0 ? [`${cost.missing} ${cost.missing === 1 ? 'line has' : 'lines have'} no price or weight and ${cost.missing === 1 ? 'is' : 'are'} not counted`] : []),
    ...(cost.stale > 0 ? [`${cost.stale} ${cost.stale === 1 ? 'price is' : 'prices are'} older than ${prices.staleDays} days`] : []),
  ];
  return {
    currency, missing: cost.missing, stale: cost.stale, portionAmount: cost.portion,
    pot: `${least}${money(cost.pot, currency)}`, portion: `${least}${money(cost.portion, currency)}`,
    words: cost.lines.every((l) => l.cost === null || l.state === 'free') ? 'No price is noted for anything in this dish. Note prices under Prices, or bring a CSV file.' : `A portion costs ${least}${money(cost.portion, currency)}, the pot ${least}${money(cost.pot, currency)}.${gaps.length > 0 ? ` ${gaps.join('; ')}.` : ''}`,
    lines: cost.lines.map((l) => ({
      lineId: l.lineId, text: textOf.get(l.lineId) ?? '', state: l.state, cost: l.cost === null ? null : money(l.cost, currency), share: l.cost === null || cost.pot === 0 ? 0 : l.cost / cost.pot,
      words: priceStateText(l.state, l.ageDays), from: l.priced === null ? null : `${l.priced.row.pack} for ${money(l.priced.row.price, currency)}, ${l.priced.row.shop}, ${l.priced.row.date}`,
    })),
    packs: cost.packs.map((p) => ({ food: p.priced.row.food, pack: p.priced.row.pack, shop: p.priced.row.shop, packs: p.packs, paid: money(p.paid, currency), left: gramsText(p.leftG), leftCost: money(p.leftCost, currency) })),
    paid: money(cost.paid, currency), leftCost: money(cost.leftCost, currency),
  };
}

/** Her price rows with what was read from each. */
export function reportPrices(rows: readonly PriceRow[], list: PriceList, at: { readonly currency: string; readonly today: string; readonly staleDays: number }): PriceListReport {
  return {
    rows: rows.map((row) => {
      const priced = list.priced.find((p) => p.row.id === row.id);
      const problem = list.problems.find((p) => p.row.id === row.id);
      const ageDays = priced ? daysBetween(day(row.date), day(at.today)) : null;
      return {
        ...row, readAs: priced ? [priced.entryName ?? priced.code ?? '', priced.form === 'raw' ? null : priced.form].filter((t) => t !== null && t !== '').join(', ') : null,
        edibleG: priced?.edibleG ?? null, perKg: priced ? `${money(pricePerGram(priced) * 1000, at.currency)} a kilo to eat` : null,
        ageDays, stale: ageDays !== null && ageDays > at.staleDays, problem: problem ? priceProblemText(problem) : null,
      };
    }),
  };
}
