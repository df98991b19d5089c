import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { cookingMethods, type ReaderWords } from '../../src/core/dish/index.ts';
import { knownSources } from './known-sources.ts';

const word = z.string().refine((text) => text === text.toLowerCase() && text.trim() === text, 'lower case, no spaces around');
const list = z.array(word);
const heat = z.enum(['none', 'low', 'medium', 'high', 'oven', 'boiling']);
const remark = z.enum(['optional', 'to-taste', 'to-serve', 'garnish', 'for-frying', 'for-greasing', 'for-dusting', 'plus-extra', 'divided', 'juice-only', 'zest-only', 'juice-and-zest']);

const reader = z.strictObject({
  numbers: z.record(word, z.number()),
  rough_numbers: z.record(word, z.tuple([z.number(), z.number(), z.number()])),
  approximate: list,
  sizes: z.record(word, z.enum(['small', 'medium', 'large'])),
  fills: z.record(word, z.enum(['scant', 'level', 'heaped'])),
  lead_ins: list,
  not_amounts: list,
  not_sizes: list,
  joined: list,
  pairs: z.array(z.tuple([word, word])),
  shorthand: z.record(word, word),
  units_by_food: z.array(z.strictObject({ unit: word, food: word, means: word })),
  shared_heads: list,
  attributes: list,
  qualifiers: list,
  making: list,
  making_with: z.record(word, list),
  adverbs: list,
  remarks: z.record(word, remark),
  headings: z.strictObject({ ingredients: list, method: list, other: list }),
  parts: list,
  timings: list,
  servings: z.strictObject({ before: list, after: list }),
  method_starts: list,
  american: list,
  section_starts: list,
});

const method = z.strictObject({
  verbs: z.array(z.strictObject({ verb: word, forms: list, same: list, method: z.enum(cookingMethods).nullable(), heat: heat.nullable(), kind: z.enum(['cook', 'add', 'move', 'remove', 'prepare', 'wait', 'serve', 'heat']) })),
  vessels: z.record(word, list),
  everything: list,
  pronouns: list,
  not_verbs: list,
  heat_words: z.record(word, heat),
  groups: z.record(word, list),
  durations: z.record(word, z.tuple([z.number().positive()]).rest(word)),
  gas_marks: z.strictObject({ source: z.string(), celsius: z.record(z.string(), z.number()) }),
  fan_offset: z.strictObject({ source: z.string(), celsius: z.number() }),
  oven_words: z.record(word, z.number()),
  also_nouns: list,
});

/** Regular endings of a verb: simmer, simmers, simmering, simmered. */
function regularForms(verb: string): string[] {
  if (verb.includes(' ')) return [];
  const doubled = /[^aeiou][aeiou][bdgklmnprt]$/.test(verb) ? [`${verb}${verb.at(-1)}ing`, `${verb}${verb.at(-1)}ed`] : [];
  if (verb.endsWith('e')) return [`${verb}s`, `${verb}d`, `${verb.slice(0, -1)}ing`];
  if (/[^aeiou]y$/.test(verb)) return [`${verb.slice(0, -1)}ies`, `${verb.slice(0, -1)}ied`, `${verb}ing`];
  return [/(?:s|sh|ch|x|z)$/.test(verb) ? `${verb}es` : `${verb}s`, `${verb}ing`, `${verb}ed`, ...doubled];
}

/** data/words/reader.yaml and method.yaml, checked. */
export function compileReaderWords(data: string): ReaderWords {
  const file = (name: string): unknown => parse(readFileSync(join(data, 'words', name), 'utf8'));
  const r = reader.parse(file('reader.yaml'));
  const m = method.parse(file('method.yaml'));
  const sources = knownSources(data);
  for (const { source } of [m.gas_marks, m.fan_offset]) if (!sources.has(source)) throw new Error(`method.yaml: unknown source ${source}`);
  return {
    numbers: r.numbers,
    roughNumbers: r.rough_numbers,
    approximate: r.approximate,
    sizes: r.sizes,
    fills: r.fills,
    leadIns: r.lead_ins,
    notAmounts: r.not_amounts,
    notSizes: r.not_sizes,
    joined: r.joined,
    pairs: r.pairs,
    shorthand: r.shorthand,
    unitsByFood: r.units_by_food,
    sharedHeads: r.shared_heads,
    attributes: r.attributes,
    qualifiers: r.qualifiers,
    making: r.making,
    makingWith: r.making_with,
    adverbs: r.adverbs,
    remarks: r.remarks,
    headings: r.headings,
    parts: r.parts,
    timings: r.timings,
    servings: r.servings,
    methodStarts: r.method_starts,
    american: r.american,
    sectionStarts: r.section_starts,
    verbs: m.verbs.flatMap(({ same, ...entry }) => [entry, ...same.map((verb) => ({ ...entry, verb, forms: [] }))]).map((entry) => ({ ...entry, forms: [...entry.forms, ...regularForms(entry.verb)] })),
    vessels: m.vessels,
    everything: m.everything,
    pronouns: m.pronouns,
    notVerbs: m.not_verbs,
    heatWords: m.heat_words,
    groups: m.groups,
    durations: Object.fromEntries(Object.entries(m.durations).flatMap(([name, [value, ...words]]) => [[name, value], ...words.map((w) => [w, value] as const)])),
    gasMarks: m.gas_marks.celsius,
    fanOffset: m.fan_offset.celsius,
    ovenWords: m.oven_words,
    alsoNouns: m.also_nouns,
  };
}
