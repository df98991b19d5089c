import { mostlyFrom, portionReading, type Finding, type NutrientTotal, type Treatment } from '../core/dish/index.ts';
import { nutrients, type Nutrient } from '../core/foods/index.ts';
import { intakesFor, type ReferenceIntake } from '../core/people/index.ts';
import type { Interval } from '../core/quantity/index.ts';
import { potWeightPath, treatmentText } from '../messages/cooked.ts';
import { matchNoteText } from '../messages/foods.ts';
import { barelyUnknown, energyText, nutrientText, readingSentence, servingsText } from '../messages/portion.ts';
import { findingText } from '../messages/findings.ts';
import { eatenText, weighStepText } from '../messages/weighing.ts';
import type { DishReport, EnergyReport, FindingReport, LineReport, NutrientReport } from './dish-report.ts';
import { sourceText, type DishTables } from './dish-tables.ts';
import { portionRange } from './portion-ranges.ts';
import type { WorkedDish, WorkedLine } from './work-out-dish.ts';

const sentencesTold = 5;
const leastShareTold = 0.15;
const energyDifferenceTold = 0.1;

const scaled = (range: Interval, by: number): Interval => ({ low: range.low * by, value: range.value * by, high: range.high * by });

function findingReport(finding: Finding): FindingReport {
  return { code: finding.code, severity: finding.severity, lineId: finding.lineId, text: findingText(finding) };
}

/** What the kitchen calls the food of a line. */
export function kitchenName(worked: WorkedLine): string {
  return worked.match.entry?.name ?? (worked.match.via === 'own' ? (worked.food?.name ?? worked.line.food.name) : worked.line.food.name);
}

function lineReport(worked: WorkedLine, at: { readonly findings: readonly FindingReport[]; readonly treatment: Treatment | null }, tables: DishTables): LineReport {
  const { findings, treatment } = at;
  const { line, match, food, correction, weighing } = worked;
  const path = weighing.paths.flatMap((steps) => steps.map((step) => [weighStepText(step), sourceText(tables, step.source, step.locator)].filter((t) => t !== null).join(' — ')));
  const corrected = (['food', 'grams', 'eaten'] as const).filter((part) => correction?.[part] !== undefined);
  const cooking = correction?.method !== undefined || correction?.minutes !== undefined ? (['cooking'] as const) : [];
  return {
    id: line.id,
    key: worked.key,
    text: line.text,
    span: line.span,
    section: line.section,
    food: {
      code: match.code,
      name: kitchenName(worked),
      tableName: food?.name ?? null,
      table: food?.table ?? null,
      state: match.form,
      nearness: match.nearness,
      note: match.note === null ? null : matchNoteText(match.note),
      others: match.alternatives.filter((a) => a.code !== null && a.code !== match.code).map((a) => ({ code: a.code ?? '', name: [a.name, a.form].filter((t) => t !== null).join(', ') })),
    },
    gramsG: worked.grams,
    gramsPath: correction?.grams === undefined ? path : ['You typed these grams.', ...path.map((step) => `Before: ${step}`)],
    eatenShare: worked.eatenShare.value,
    eatenWords: correction?.eaten === undefined ? eatenText(worked.eaten) : null,
    cooking: { method: treatment?.method ?? null, minutes: treatment?.minutes?.value ?? null, words: treatment === null ? '' : treatmentText(treatment) },
    corrected: [...corrected, ...cooking],
    confidence: Math.min(line.confidence, correction?.food === undefined ? match.confidence : 1, correction?.grams === undefined ? weighing.confidence : 1),
    findings,
  };
}

function nutrientReport(nutrient: Nutrient, total: NutrientTotal, at: { readonly worked: WorkedDish; readonly names: ReadonlyMap<string, string>; readonly intake: ReferenceIntake | null; readonly cookedG: number }): NutrientReport {
  const { worked, names, intake, cookedG } = at;
  const portions = worked.servings.count;
  const nowhere = total.contributions.length > 0 && total.contributions.every((c) => c.kind === 'not-in-table' || c.kind === 'no-food' || c.kind === 'no-weight');
  const state = total.state === 'unknown' && nowhere ? 'not-in-tables' : total.state;
  const known = state === 'complete' || state === 'partial';
  const portion = known ? portionRange(worked, total).interval : null;
  const givers = total.contributions
    .filter((c) => (c.amount ?? 0) > 0)
    .map((c) => ({ lineId: c.lineId, name: names.get(c.lineId) ?? c.lineId, amount: (c.amount ?? 0) / portions, share: total.known > 0 ? (c.amount ?? 0) / total.known : 0 }))
    .sort((a, b) => b.amount - a.amount);
  return {
    id: nutrient.id, name: nutrient.name, unit: nutrient.unit, group: nutrient.group, state, unknownShare: total.unknownShare, portion,
    per100g: known && cookedG > 0 ? (total.known * 100) / cookedG : null,
    pot: known ? total.known : null,
    reference: intake === null ? null : {
      amount: intake.amount, kind: intake.kind, share: portion === null ? null : portion.value / intake.amount,
      source: intake.source, locator: intake.locator, checked: intake.checked, note: intake.note,
    },
    top: givers.slice(0, 5),
    words: nutrientText({ state, portion: portion?.value ?? null, unit: nutrient.unit, unknownShare: total.unknownShare, linesWithoutWeight: worked.totals.linesWithoutWeight.length }),
  };
}

/** Known only as far as every part that gives energy is known; a gap too small to matter is left aside, as everywhere. */
function energyState(worked: WorkedDish): EnergyReport['state'] {
  const parts = worked.energy.parts.map(({ nutrient }) => worked.totals.totals.get(nutrient));
  const main = parts.filter((total) => total !== undefined && ['carbohydrate', 'protein', 'fat'].includes(total.nutrient));
  if (main.length > 0 && main.every((total) => total?.state === 'unknown')) return 'unknown';
  const gap = parts.some((total) => total !== undefined && total.state !== 'complete' && total.unknownShare >= barelyUnknown);
  return gap || worked.totals.linesWithoutWeight.length > 0 ? 'partial' : 'complete';
}

function energyReport(worked: WorkedDish, tableRange: Interval | null): EnergyReport {
  const portions = worked.servings.count;
  const [declaredKj, declaredKcal] = [worked.energy.energyKj / portions, worked.energy.energyKcal / portions];
  const tableKcal = (worked.totals.totals.get('energy')?.known ?? 0) / portions;
  const differ = tableKcal > 0 && Math.abs(declaredKcal - tableKcal) / tableKcal > energyDifferenceTold;
  // The doubt of the declared energy is that of the tables' own: weights, composition and losses are the same.
  const rangeKcal = tableRange === null || tableRange.value === 0 ? { low: declaredKcal, value: declaredKcal, high: declaredKcal } : scaled(tableRange, declaredKcal / tableRange.value);
  const energy = { state: energyState(worked), declaredKj, declaredKcal, tableKcal, differ };
  return { ...energy, rangeKcal, words: energyText(energy) };
}

/** A worked dish in words and plain figures. */
export function reportDish(worked: WorkedDish, tables: DishTables): DishReport {
  const american = worked.choices.measures === 'us' || worked.choices.measures === 'us-label';
  const findings = [...worked.recipe.findings.filter((f) => !(american && f.code === 'us-measures')), ...worked.lines.flatMap((l) => (l.correction?.grams === undefined ? l.weighing.findings : []))].map(findingReport);
  const names = new Map(worked.lines.map((l) => [l.line.id, kitchenName(l)]));
  const intakes = intakesFor(tables.intakes, worked.choices.lifeStage, worked.choices.authority);
  const { pot } = worked.cooked;
  const cookedG = pot.cookedGrams.value;
  const nutrientReports = nutrients.map((nutrient) => {
    const total = worked.totals.totals.get(nutrient.id);
    if (!total) throw new Error(`Bug: no total for ${nutrient.id}`);
    return nutrientReport(nutrient, total, { worked, names, intake: intakes.get(nutrient.id) ?? null, cookedG });
  });
  const byId = new Map(nutrientReports.map((n) => [n.id, n]));
  const reading = portionReading(
    nutrientReports.map((n) => ({ nutrient: n.id, state: n.state, unknownShare: n.unknownShare, lineWithoutWeight: worked.totals.linesWithoutWeight.length > 0, referenceShare: n.reference?.share ?? null, top: n.top })),
    sentencesTold,
    leastShareTold,
  );
  return {
    title: worked.recipe.title,
    choices: worked.choices,
    servings: { count: worked.servings.count, range: worked.servings.range, basis: worked.servings.basis, of: worked.servings.of, words: servingsText(worked.servings) },
    lines: worked.lines.map((l) => lineReport(l, { findings: findings.filter((f) => f.lineId === l.line.id), treatment: worked.cooked.treatments.get(l.line.id) ?? null }, tables)),
    steps: worked.recipe.steps.map((step) => ({ number: step.number, text: step.text, actions: step.actions.map(({ verb, method, minutes, celsius, lines }) => ({ verb, method, minutes, celsius, lines })) })),
    pot: {
      rawWeightG: worked.lines.reduce((sum, l) => sum + (l.grams?.value ?? 0), 0),
      cookedWeightG: pot.cookedGrams,
      portionWeightG: scaled(pot.cookedGrams, 1 / worked.servings.count),
      portionVolumeMl: scaled(pot.volumeMl, 1 / worked.servings.count),
      weightPath: potWeightPath(pot, worked.totals.weightEatenG),
      linesWithoutWeight: worked.totals.linesWithoutWeight.length,
      linesWithoutFood: worked.totals.linesWithoutFood.length,
    },
    energy: energyReport(worked, byId.get('energy')?.portion ?? null),
    nutrients: nutrientReports,
    reading: reading.map((item) => readingSentence({
      name: sayName(byId.get(item.nutrient)?.name ?? item.nutrient), referenceShare: item.referenceShare, atLeast: item.atLeast,
      givers: mostlyFrom(byId.get(item.nutrient)?.top ?? []).map((id) => names.get(id) ?? id),
    })),
    findings,
    cautions: worked.cautions.map(({ rule, lineId }) => ({
      id: rule.id, text: rule.text, why: lineId === null ? 'Because of what the portion holds.' : `Because of the ${names.get(lineId) ?? 'line'}.`,
      source: rule.source === 'from-memory' ? `${rule.locator}; ${rule.checked}` : [sourceText(tables, rule.source, rule.locator), rule.checked].filter((t) => t !== null).join('; '),
    })),
    attributions: [...tables.sources.values()].map((s) => s.attribution).filter((a) => a !== undefined),
  };
}

/** "Folate, dietary equivalents" is told as folate; "Thiamin (B1)" as thiamin (B1). */
function sayName(name: string): string {
  const plain = name.replace(/, .*$/, '');
  return /^(Vitamin|EPA)/.test(plain) ? plain.replace(/^Vitamin/, 'vitamin') : plain.charAt(0).toLowerCase() + plain.slice(1);
}
