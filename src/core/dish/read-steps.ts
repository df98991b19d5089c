import type { CookingMethod, IngredientLine, MethodStep, Span, StepAction } from './recipe.ts';
import { readClauses, type Clause } from './read-clauses.ts';
import { readCelsius, readHeat, readLid, readMinutes, readUntil } from './read-conditions.ts';
import { lineNames, type LineNames } from './read-line-names.ts';
import { onFood, potState, type PotState } from './read-pots.ts';
import { joinRows, partOfRow, readTokens } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

type Draft = { -readonly [K in keyof StepAction]: StepAction[K] };

interface Reading {
  readonly names: LineNames;
  readonly pots: PotState;
  readonly taken: Set<string>;
  readonly vocabulary: ReaderVocabulary;
  /** Lines of the action before, for "it" and "them". */
  last: readonly string[];
  /** Lines prepared but not yet in a vessel: "season the fish and grill". */
  hand: readonly string[];
  ovenCelsius: number | null;
  /** Lines of something that a food can cook in. */
  readonly liquids: ReadonlySet<string>;
}

/** Verbs whose object may stay unsaid: "lift out the chicken, spread on a tray". */
const placing = new Set(['put', 'place', 'spread', 'arrange', 'lay', 'transfer', 'tip', 'pour', 'spoon']);
/** "When the onions are soft, …" names no onions to take. */
const subordinate = new Set(['when', 'once', 'while', 'after', 'if', 'before', 'as']);
const mixtures = new Set(['mixture', 'batter', 'dough', 'mix', 'marinade', 'filling']);
const lyingHot = new Set(['add', 'prepare', 'wait']);

function linesOf(clause: Clause, reading: Reading, section: string | null): { lines: string[]; pronoun: boolean } {
  const until = clause.row.words.findIndex((word) => word === 'until' || word === 'till');
  const comma = until < 0 ? -1 : clause.row.words.indexOf(',', until);
  const lead = subordinate.has(clause.row.words[0] ?? '') ? clause.row.words.indexOf(',') : -1;
  if (lead > 0 && lead < clause.row.words.indexOf(clause.verb)) return linesOf({ ...clause, row: partOfRow(clause.row, lead + 1, clause.row.words.length) }, reading, section);
  const told = until < 0 ? clause.row : joinRows(partOfRow(clause.row, 0, until), comma < 0 ? partOfRow(clause.row, 0, 0) : partOfRow(clause.row, comma, clause.row.words.length));
  const lines = reading.names.named(told, reading.taken, section);
  const pronoun = told.words.some((word) => reading.vocabulary.words.pronouns.includes(word));
  if (pronoun && lines.length === 0) return { lines: [...reading.last], pronoun };
  const verb = told.words.indexOf(clause.verb);
  const object = verb >= 0 && ['it', 'them', 'both', 'these'].includes(told.words[verb + 1] ?? '');
  return { lines: object ? [...new Set([...reading.last, ...lines])] : lines, pronoun };
}

/** "cook" and a stir over the fire take the treatment of the vessel they happen in. */
const liquid = /\b(water|stock|broth|milk|wine|passata|tomato(es)?|cream|cider|beer|juice|dashi|pani|doodh|bouillon)\b/i;
const fat = /^(?:oil|ghee|butter|fat|lard|dripping|margarine)$/;

function methodOf(clause: Clause, minutes: boolean, reading: Reading): CookingMethod | null {
  const { entry, row } = clause;
  const vessel = reading.pots.current;
  const words = row.words;
  const says = (word: string): boolean => words.includes(word);
  if (!entry) return null;
  if (entry.verb === 'cook' || ((entry.verb === 'heat' || entry.verb === 'warm') && (says('through') || says('gently')) && !words.some((word) => fat.test(word))) || entry.verb === 'finish') {
    if (says('microwave')) return 'microwaved';
    if (says('oven')) return vessel?.kind === 'pan' && vessel.lid === true ? 'stewed' : 'baked'; // a covered pot in the oven braises
    if (says('grill')) return 'grilled';
    if (vessel?.word === 'slow cooker' || vessel?.word === 'slow-cooker' || vessel?.word.startsWith('crock')) return 'stewed';
    if (vessel?.word === 'pressure cooker' || vessel?.word === 'instant pot') return vessel.cooking ?? 'pressure-cooked';
    if (says('steamer') || vessel?.kind === 'steamer') return 'steamed';
    if (says('pack') || says('packet') || says('package') || (says('water') && (says('boiling') || says('salted')))) return 'boiled-drained';
    if (vessel?.cooking) return vessel.cooking;
    if (vessel?.kind === 'frying pan' || says('oil') || says('butter')) return 'fried';
    if (vessel?.kind === 'oven dish') return 'baked';
    if (entry.verb !== 'cook') return 'reheated';
    const wet = words.some((word) => liquid.test(word)) || [...(vessel?.lines ?? [])].some((id) => reading.liquids.has(id));
    return wet && minutes ? 'simmered' : null;
  }
  if (entry.verb === 'keep' && (says('warm') || says('hot'))) return 'kept-hot';
  if (entry.method === 'fried' && (says('wok') || vessel?.word === 'wok') && entry.verb === 'fry') return 'stir-fried';
  if (entry.method === 'fried' && entry.verb !== 'fry' && (says('oven') || says('roasting'))) return 'roasted';
  if (entry.method === 'roasted' && says('pan') && says('dry')) return 'toasted';
  // "Put it in the oven for 25 minutes"
  if (entry.method === null && minutes && says('oven') && (entry.kind === 'add' || entry.kind === 'move')) return 'baked';
  if (entry.method === null && minutes && lyingHot.has(entry.kind) && vessel?.cooking && entry.heat !== 'none' && vessel.kind !== 'bowl') return vessel.cooking;
  return entry.method;
}

/** Notes leave out the verb where a food and a time stand ("tofu 6 min"): then it is cooked. */
function unsaidCooking(clause: Clause, reading: Reading): Clause {
  const { row, entry } = clause;
  const { vocabulary } = reading;
  if (entry !== null || vocabulary.notVerbs.has(row.words[0] ?? '') || ['the', 'them', 'it', 'a', 'all'].includes(row.words[1] ?? '') || row.words.includes('oven') || row.words.some((word) => word === 'keeps' || word === 'ready')) return clause;
  if (readMinutes(row, vocabulary) === null || reading.names.named(row, reading.taken, null).length === 0) return clause;
  const oil = row.words.some((word) => /^(?:oil|ghee|butter|fat|wok)$/.test(word));
  return { row, verb: oil ? 'fry' : 'cook', entry: vocabulary.verbForms.get(oil ? 'fry' : 'cook') ?? null };
}

function readAction(told: Clause, reading: Reading, section: string | null): StepAction {
  const clause = unsaidCooking(told, reading);
  const { row, entry } = clause;
  const { vocabulary, pots } = reading;
  const { lines: named, pronoun } = linesOf(clause, reading, section);
  const mixed = named.length === 0 && row.words.some((word) => mixtures.has(word)) && entry?.kind !== 'prepare';
  const implied = named.length === 0 && !mixed && placing.has(clause.verb) && !row.words.some((word) => ['lid', 'aside', 'heat'].includes(word)) && !(row.words.includes('oven') && readMinutes(row, vocabulary) === null);
  const inHand = named.length === 0 && entry?.kind === 'cook' && reading.hand.length > 0;
  const withHand = entry?.kind === 'add' && reading.hand.length > 0 && row.words[row.words.indexOf(clause.verb) + 1] === 'with' && named.length > 0;
  const lines = withHand ? [...new Set([...reading.hand, ...named])] : mixed ? pots.mixture() : inHand ? [...reading.hand] : implied ? [...reading.last] : named;
  const minutes = readMinutes(row, vocabulary);
  const celsius = readCelsius(row, vocabulary);
  const said = pots.enter(clause, lines);
  const method = methodOf(clause, minutes !== null, reading);
  const oven = method === 'baked' || method === 'roasted' || entry?.heat === 'oven' || (entry?.kind === 'heat' && row.words.includes('oven'));
  if (oven && celsius !== null) reading.ovenCelsius = celsius;
  const inPot = pots.take({ clause, lines, method, pronoun, moved: said });
  if (entry?.kind === 'prepare' || onFood.has(clause.verb)) reading.hand = lines.length > 0 ? lines.filter((id) => !pots.holds(id)) : reading.hand;
  else if (entry?.kind !== 'heat') reading.hand = [];
  for (const id of lines) reading.taken.add(id);
  if (lines.length > 0) reading.last = lines;
  else if (inPot.length > 0 && !row.words.includes('away')) reading.last = inPot;
  const vessel = pots.current;
  const saidLid = entry?.verb === 'cover' && readLid(row) === null ? true : readLid(row);
  if (vessel && saidLid !== null) vessel.lid = saidLid;
  const lid = saidLid ?? (entry?.kind === 'cook' && vessel !== null ? vessel.lid : null);
  const first = row.tokens[0]!;
  return {
    verb: clause.verb,
    method,
    minutes,
    celsius: celsius ?? (method === 'baked' || method === 'roasted' ? reading.ovenCelsius : null),
    heat: readHeat(row, vocabulary) ?? entry?.heat ?? null,
    lid,
    until: readUntil(row),
    lines,
    inPot,
    span: { start: first.start, end: row.tokens.at(-1)!.end },
  };
}

/** Words without a verb ("about 20 minutes", "lid on") say more about the action before. */
function addTo(action: Draft, clause: Clause, reading: Reading): void {
  const { row } = clause;
  const { vocabulary } = reading;
  action.minutes ??= readMinutes(row, vocabulary);
  action.celsius ??= readCelsius(row, vocabulary);
  action.lid ??= readLid(row);
  action.until ??= readUntil(row);
  action.span = { start: action.span.start, end: row.tokens.at(-1)!.end };
}

/** "Cook the pasta, then drain": what is drained was boiled in water that is poured away. */
function settleDraining(steps: readonly Draft[][]): void {
  const actions = steps.flatMap((own, step) => own.map((action) => ({ action, step })));
  actions.forEach(({ action, step }, at) => {
    if (action.verb !== 'drain') return;
    for (let n = at - 1; n >= Math.max(0, at - 4); n--) {
      const { action: before, step: beforeStep } = actions[n]!;
      const named = action.lines.some((id) => before.inPot.includes(id) || before.lines.includes(id));
      const same = named || (beforeStep === step && (action.inPot.length === 0 || before.inPot.some((id) => action.inPot.includes(id))));
      if (!same) continue;
      if (before.method === 'boiled-kept' || before.method === 'simmered' || (before.method === null && before.verb === 'cook')) before.method = 'boiled-drained';
      if (before.method !== null) return;
    }
  });
}

/** Reads the method: every step with what is done in it, to which lines, how hot and how long. */
export function readSteps(text: string, stretches: readonly (Span & { readonly section: string | null })[], lines: readonly IngredientLine[], vocabulary: ReaderVocabulary): MethodStep[] {
  const reading: Reading = { names: lineNames(lines, vocabulary), pots: potState(vocabulary), taken: new Set(), vocabulary, last: [], hand: [], ovenCelsius: null, liquids: new Set(lines.filter((line) => liquid.test(line.food.name)).map(({ id }) => id)) };
  const actions: Draft[][] = [];
  const steps = stretches.slice(0, mostSteps).map((stretch, n) => {
    const own: Draft[] = [];
    for (const clause of readClauses(readTokens(text, stretch.end - stretch.start > longestStep ? { start: stretch.start, end: stretch.start + longestStep } : stretch), vocabulary)) {
      const degrees = clause.entry === null && clause.row.words.includes('oven') ? readCelsius(clause.row, vocabulary) : null;
      if (degrees !== null) reading.ovenCelsius = degrees; // "Oven on 200C"
      const before = own.at(-1);
      if (clause.verb === '' && before) addTo(before, clause, reading);
      else if (clause.verb !== '') own.push(readAction(clause, reading, stretch.section));
    }
    actions.push(own);
    return { number: n + 1, text: text.slice(stretch.start, stretch.end), span: { start: stretch.start, end: stretch.end }, actions: own };
  });
  settleDraining(actions);
  return steps;
}

const mostSteps = 300;
const longestStep = 5_000;
