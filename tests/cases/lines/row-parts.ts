import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'zod';

const root = new URL('../../../', import.meta.url);

const Header = z.object({ entries: z.array(z.object({ code: z.string() })) });
const codes = new Set(Header.parse(JSON.parse(readFileSync(new URL('dist/tables/foods.json', root), 'utf8'))).entries.map((entry) => entry.code));

const Units = z.array(z.object({ id: z.string(), kind: z.string() }));
const units = Units.parse(parse(readFileSync(new URL('data/units.yaml', root), 'utf8')));
const measuring = new Set(units.filter((unit) => unit.kind !== 'count').map((unit) => unit.id));

/** What the rows of both sets of answered lines are made of. */
export const unitIds: ReadonlySet<string> = new Set(units.map((unit) => unit.id));
export const Code = z.string().refine((code) => codes.has(code), 'no such food code');
export const Range = z.strictObject({ low: z.number().positive(), high: z.number().positive() }).refine((range) => range.low < range.high, 'low end above high end');
export const Measure = z.strictObject({ quantity: z.number().positive(), unit: z.string().refine((unit) => measuring.has(unit), 'not a mass, volume or length') });
export const State = z.enum(['raw', 'dried', 'canned', 'cooked', 'frozen', 'ground', 'whole', 'powder', 'smoked', 'juice', 'peel', 'pickled', 'fermented', 'toasted', 'liquid', 'prepared']);
export const Remark = z.enum(['optional', 'to-taste', 'to-serve', 'garnish', 'for-frying', 'for-greasing', 'for-dusting', 'plus-extra', 'divided', 'juice-only', 'zest-only', 'juice-and-zest']);
