import { join } from 'node:path';
import { fastHeap } from '../../../src/adapters/tables/fast-heap.ts';
import { unpackReaders } from '../../../src/adapters/tables/claim-reader.ts';
import { claimReader, readTogether, senseIndex, statementVocabulary, type SayInput, type StatementRules, type StatementVocabulary } from '../../../src/core/statements/index.ts';
import { compileSources } from '../../../scripts/tables/sources.ts';
import { compileClaimReader } from '../../../scripts/tables/claim-reader.ts';
import { compilePolarityWeights } from '../../../scripts/tables/polarity-weights.ts';
import { compileStatements } from '../../../scripts/tables/statements.ts';
import { compileWordSenses } from '../../../scripts/tables/word-senses.ts';
import { plateWith } from './plates.ts';

const data = join(import.meta.dirname, '../../../data');

export function loadRules(): { rules: StatementRules; vocabulary: StatementVocabulary } {
  const rules = compileStatements(data, new Set(compileSources(data).map((s) => s.id)));
  const ground = { senses: senseIndex(compileWordSenses()), fitted: { reader: readTogether(unpackReaders(compileClaimReader(data)).map((weights) => claimReader(weights, fastHeap))), polarity: new Map(compilePolarityWeights(data)) } };
  return { rules, vocabulary: statementVocabulary(rules.words, ground) };
}

/** Invented dishes: one rich, one lean, one of which nothing is known, a soup, one with wide ranges. */
export const plates = {
  rich: plateWith(
    { energy: 150, protein: 9, fat: 6, saturates: 1, 'trans-fat': 0, monounsaturates: 3, polyunsaturates: 1.5, carbohydrate: 14, sugars: 2, fibre: 6.5, sodium: 60, iron: 4.5, magnesium: 120, folate: 90, 'folate-dfe': 90, 'vitamin-c': 30, 'vitamin-k': 90, 'vitamin-b6': 0.5, zinc: 3.2, calcium: 150, potassium: 700, 'alpha-linolenic': 0.5, 'epa-dha': 0, cholesterol: 0 },
    { title: 'A test stew', addedSugars: 'no', foods: [{ name: 'lentils', names: ['lentils'], portionG: 60, raccG: 35, gives: { iron: 4 } }, { name: 'turmeric', names: ['turmeric'], portionG: 0.4, raccG: 1, gives: {} }] },
  ),
  lean: plateWith({ energy: 60, protein: 1, fat: 0.4, saturates: 0.1, 'trans-fat': 0, monounsaturates: 0.1, polyunsaturates: 0.1, carbohydrate: 12, sugars: 9, fibre: 1, sodium: 300, iron: 0.3, magnesium: 10, folate: 8, 'vitamin-c': 3, 'vitamin-k': 2 }, { title: 'A test compote', addedSugars: 'yes', addedSalt: 'no' }),
  unknown: plateWith({}, { title: 'A test dish of which nothing is known' }),
  soup: plateWith({ energy: 45, protein: 2.5, fat: 1.2, saturates: 0.2, fibre: 1.2, sodium: 200, iron: { low: 0.8, value: 1.2, high: 1.6 }, 'vitamin-c': 14, potassium: 250, folate: 20 }, { title: 'A test soup', form: 'liquid', usKind: 'main-dish' }),
  wide: plateWith({ energy: { low: 90, value: 120, high: 150 }, protein: { low: 3, value: 5, high: 8 }, iron: { low: 1.9, value: 2.4, high: 3.2 }, 'vitamin-c': { low: 8, value: 13, high: 20 }, fibre: { state: 'partial', portion: { low: 3.2, value: 3.4, high: 3.6 } }, sodium: { state: 'partial', portion: { low: 10, value: 12, high: 14 } } }, { title: 'A test bake', usKind: 'meal' }),
};

export const sayInput = (plate: SayInput['plate'], laws: SayInput['laws'] = ['eu', 'gb', 'us', 'codex']): SayInput => ({ plate, other: null, laws, emphasis: { nutrients: ['iron'], topics: ['tiredness'] }, client: [], ownNotes: [], on: '2026-11-25' });
