import {
  checkScript, inPortion, type CheckedClaim, type CheckedScript, type CheckedSentence, type Emphasis, type EvidenceMatch, type EvidenceNote, type LawGround, type LawId, type Plate, type StatementRules, type StatementVocabulary, type VerdictKind,
} from '../core/statements/index.ts';
import { nutrient } from '../core/foods/index.ts';
import { figure } from '../messages/numbers.ts';
import { claimWords, classNames, clauseWords, comparedDishes, disclosureStatement, gradeNames, lawNames, measurementWords, notChecked, nutrientName, ownNoteChecked, polarityNames, readAsWords, reasonWords, unsureWords, verdictWords } from '../messages/statements.ts';
import type { LawHolds, SayCaution, SayClaim, SayEvidence, SayReport, SaySentence } from './say-report.ts';
import { talkSheet } from './talk-sheet.ts';

/** What is asked when a script is held against a dish. */
export interface SayRequest {
  readonly script: string;
  readonly laws: readonly LawId[];
  readonly emphasis: Emphasis;
  /** Tags of the client or audience: pregnant, trying, anticoagulant, thyroid-tablet … */
  readonly client: readonly string[];
  readonly ownNotes: readonly EvidenceNote[];
  readonly on: string;
}

export interface SayGround {
  readonly plate: Plate;
  readonly other: Plate | null;
  readonly rules: StatementRules;
  readonly vocabulary: StatementVocabulary;
  /** Cautions that the dish itself raised, in words. */
  readonly dishCautions: readonly SayCaution[];
  /** The allergen line of the dish in words; without one the plate's own list is used. */
  readonly allergenLine?: string | null;
}

const checkedWords = { text: 'compared with the official text', secondary: 'compared with a reproduction', memory: 'from memory, to be verified', abstract: 'compared with the work’s own text' } as const;

function evidenceOf({ note, portionG }: EvidenceMatch, own: ReadonlySet<string>): SayEvidence {
  const portion = portionG === null ? '' : ` A portion has ${figure(portionG)} g.`;
  return {
    id: note.id, statement: note.statement, grade: note.grade, gradeName: gradeNames[note.grade], finding: note.finding, population: note.population,
    dose: note.dose === null ? null : `The studies gave ${note.dose}.${portion}`, citation: note.citation, doi: note.doi, checked: own.has(note.id) ? ownNoteChecked : checkedWords[note.checked],
  };
}

const beside = (disclose: readonly string[]): string[] => (disclose.length === 0 ? [] : [disclosureStatement(disclose)]);

const strictness: readonly VerdictKind[] = ['not-lawful', 'short', 'unknown', 'proof', 'near', 'say-with', 'say', 'free'];

function claimOf({ claim, verdicts, rewrites }: CheckedClaim, rules: StatementRules): SayClaim {
  const kind = strictness.find((k) => verdicts.some((v) => v.kind === k)) ?? 'free';
  return {
    class: claim.class, className: classNames[claim.class], polarity: claim.polarity, polarityName: polarityNames[claim.polarity], span: claim.span, start: claim.start, end: claim.end,
    kind, ...verdictWords[kind], rewrites, readAs: readAsWords(claim.class, claim.because, claim), unsure: unsureWords(claim.chance),
    laws: verdicts.map((v) => ({
      law: v.law, lawName: lawNames[v.law], kind: v.kind, ...verdictWords[v.kind],
      reasons: v.reasons.map(reasonWords), beside: beside(v.disclose), figures: v.measurements.map(measurementWords), clauses: v.clauses.map((id) => clauseWords(id, rules.clauses)),
    })),
  };
}

function sentenceOf(checked: CheckedSentence, rules: StatementRules, own: ReadonlySet<string>): SaySentence {
  const { text, start, end } = checked.sentence;
  const { instead } = checked;
  return { text, start, end, sayable: checked.sayable, claims: checked.claims.map((c) => claimOf(c, rules)), instead: instead === null ? null : { text: instead.text, beside: beside(instead.disclose) }, evidence: checked.evidence.map((e) => evidenceOf(e, own)), cautions: checked.cautions.map((c) => c.text) };
}

const relative: ReadonlySet<string> = new Set(['reduced', 'increased', 'light']);

function holdsOf(ground: LawGround): LawHolds {
  const held = ground.nutrition.filter((f) => f.judged.standing === 'holds' || f.judged.standing === 'estimate');
  const stronger = (f: (typeof held)[number]): boolean => f.rule.claim === 'source' && held.some((g) => g.nutrient === f.nutrient && g.rule.claim === 'high' && g.judged.standing === f.judged.standing);
  return {
    law: ground.law, name: lawNames[ground.law], beside: beside(ground.levels.filter((f) => f.standing !== 'under').map((f) => f.nutrient)),
    claims: held.filter((f) => !stronger(f)).sort((a, b) => Number(b.judged.standing === 'holds') - Number(a.judged.standing === 'holds'))
      .map((f) => ({ words: `${claimWords(f.rule.claim, f.nutrient)}${ground.other !== null && relative.has(f.rule.claim) ? `, compared with “${ground.other.title}”` : ''}`, sure: f.judged.standing === 'holds', figures: f.judged.by.map(measurementWords), clause: f.rule.clause })),
    health: ground.law === 'us' || ground.law === 'codex' ? [] : ground.health.filter((h) => h.judged.standing === 'holds' || h.judged.standing === 'estimate')
      .map((h) => ({ sentence: h.sentence, sure: h.judged.standing === 'holds', condition: h.judged.by.map(measurementWords).join('; '), checked: checkedWords[h.effect.checked] })),
  };
}

/** What the portion holds of the nutrients that the words beside a claim point to. */
function pointedTo(checked: CheckedScript, plate: Plate): string[] {
  if (checked.kind !== 'checked') return [];
  const ids = new Set(checked.sentences.flatMap((s) => (s.instead === null ? (s.sayable ? s.claims.flatMap((c) => c.verdicts.flatMap((v) => v.disclose)) : []) : s.instead.disclose)));
  return [...ids].map((id) => {
    const amount = inPortion(plate, [id]);
    const name = id === 'sodium' ? 'sodium' : nutrientName(id);
    return amount === null ? `${name} not known` : `${name} ${amount.atLeast ? 'at least ' : ''}${figure(amount.range.value)} ${nutrient(id).unit}`;
  });
}

/** Cautions of the dish and of the sentences, each once. */
function cautionsOf(checked: CheckedScript, ground: SayGround): SayCaution[] {
  const found = new Map(ground.dishCautions.map((c) => [c.id, c]));
  if (checked.kind === 'checked') for (const s of checked.sentences) for (const c of s.cautions) found.set(c.id, { id: c.id, text: c.text, source: `${c.locator} (${c.checked})` });
  return [...found.values()];
}

/** Holds a script against a dish under the laws asked for, and makes the talk sheet. */
export function say(request: SayRequest, ground: SayGround): SayReport {
  const { plate, other, rules, vocabulary } = ground;
  const checked = checkScript(request.script, { plate, other, laws: request.laws, emphasis: request.emphasis, client: request.client, ownNotes: request.ownNotes, on: request.on }, rules, vocabulary);
  const compared = other === null ? null : { dish: plate.title, other: other.title, words: comparedDishes(plate.title, other.title) };
  const laws = request.laws.map((id) => ({ id, name: lawNames[id] }));
  if (checked.kind === 'not-checked') {
    const why = checked.why === 'english' ? 'other' : checked.why;
    return { title: plate.title, laws, compared, notChecked: notChecked[why], sentences: [], holds: [], cautions: [], sheet: { lines: [], footnotes: [], description: '' } };
  }
  const own = new Set(request.ownNotes.map((note) => note.id));
  const sentences = checked.sentences.map((s) => sentenceOf(s, rules, own));
  const cautions = cautionsOf(checked, ground);
  const sheet = talkSheet(sentences, { title: plate.title, cautions, allergens: plate.allergens, allergenLine: ground.allergenLine ?? null, nutrition: pointedTo(checked, plate) });
  return { title: plate.title, laws, compared, notChecked: null, sentences, holds: checked.grounds.map((g) => holdsOf(g)), cautions, sheet };
}
