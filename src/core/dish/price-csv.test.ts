import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvRows, readPrice, readPriceCsv, writePriceCsv } from './price-csv.ts';
import type { PriceRow } from './price-list.ts';

const id = (row: number): string => `r${row}`;

describe('a price list as CSV', () => {
  const cell = fc.string({ minLength: 1, maxLength: 20 }).map((s) => s.trim()).filter((s) => s !== '' && !s.startsWith("'"));
  const row: fc.Arbitrary<Omit<PriceRow, 'id'>> = fc.record({ food: cell, pack: cell, price: fc.integer({ min: 1, max: 100_000 }).map((n) => n / 100), shop: cell, date: fc.constantFrom('2026-01-02', '2025-12-31') });
  it('comes back as it went out, quotes, commas and formula signs too', () => {
    fc.assert(fc.property(fc.array(row, { maxLength: 8 }), (rows) => {
      const back = readPriceCsv(writePriceCsv(rows.map((r, i) => ({ ...r, id: id(i) }))), id);
      expect(back.faults).toEqual([]);
      expect(back.rows.map(({ food, pack, price, shop, date }) => ({ food, pack, price, shop, date }))).toEqual(rows);
    }));
  });
  it('keeps good rows and tells the others by their row', () => {
    const { rows, faults } = readPriceCsv('food,pack,price,shop,date\nkale,200 g,1.20,market,2026-11-01\nleek,500 g,lots,market,2026-11-01\n,1,1,x,2026-11-01\nrice,1 kg,2,x,1st May\n', id);
    expect(rows.map((r) => r.food)).toEqual(['kale']);
    expect(faults.map((f) => [f.row, f.code])).toEqual([[3, 'bad-price'], [4, 'no-food'], [5, 'bad-date']]);
  });
  it('reads semicolons, a byte order mark and columns in another order', () => {
    const { rows } = readPriceCsv('\ufeffDate;Price;Pack;Food;Shop\r\n2026-11-01;2,50;"1 kg";"spelt; pearled";mill\r\n', id);
    expect(rows).toEqual([{ id: 'r2', food: 'spelt; pearled', pack: '1 kg', price: 2.5, shop: 'mill', date: '2026-11-01' }]);
  });
  it('says which column is missing', () => expect(readPriceCsv('food,price\nkale,1\n', id).faults.map((f) => f.text)).toEqual(['pack', 'shop', 'date']));
  it.each([['2.50', 2.5], ['2,50', 2.5], ['£2.50', 2.5], ['1,250.00', 1250], ['1.250,00', 1250], ['0', null], ['-3', null], ['free', null], ['1.2.3', null]])('reads the price %s as %s', (text, value) => expect(readPrice(text)).toBe(value));
  it('never throws on any text', () => {
    fc.assert(fc.property(fc.string(), (text) => {
      csvRows(text);
      readPriceCsv(text, id);
    }));
  });
});
