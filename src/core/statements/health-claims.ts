import type { Condition } from './condition.ts';
import { judgeCondition, type Judged, type Standing } from './judge-condition.ts';
import type { Checked, LawId } from './law.ts';
import type { ClaimNutrient, NutritionFinding, NutritionInput } from './nutrition-claims.ts';
import type { Plate } from './plate.ts';
import { isNutrientId } from '../foods/index.ts';

export type HealthLead = 'contributes' | 'maintains' | 'role' | 'needed' | 'whole';

export interface HealthEffect {
  readonly id: string;
  readonly lead: HealthLead;
  readonly says: string;
  readonly topics: readonly string[];
  readonly checked: Checked;
}

/** Permitted health claims of one nutrient or food, a row of data/parameters/statements/health-claims.yaml. */
export interface HealthRule {
  readonly nutrient: ClaimNutrient | 'food';
  readonly name: string;
  readonly plural?: boolean;
  readonly food?: readonly string[];
  readonly condition: 'source' | { readonly foodG: number } | Condition;
  readonly tell?: string;
  readonly effects: readonly HealthEffect[];
}

/** A permitted health claim with how its condition stands for the dish. */
export interface HealthFinding {
  readonly law: LawId;
  readonly rule: HealthRule;
  readonly effect: HealthEffect;
  /** The sentence as the list prints it. */
  readonly sentence: string;
  readonly judged: Judged;
  /** How near it is to the theme asked for; 0 when it has nothing to do with it. */
  readonly relevance: number;
}

/** What the phase or theme of the dish puts first: nutrients and topics of data/parameters/statements/health-claims.yaml. */
export interface Emphasis {
  readonly nutrients: readonly string[];
  readonly topics: readonly string[];
}

const leads: Record<Exclude<HealthLead, 'whole'>, readonly [string, string]> = {
  contributes: ['contributes to', 'contribute to'],
  maintains: ['contributes to the maintenance of', 'contribute to the maintenance of'],
  role: ['has a role in', 'have a role in'],
  needed: ['is needed for the maintenance of', 'are needed for the maintenance of'],
};

/** The sentence of a permitted claim, as the list words it. */
export function healthSentence(rule: HealthRule, effect: HealthEffect): string {
  if (effect.lead === 'whole') return effect.says;
  return `${rule.name} ${leads[effect.lead][rule.plural ? 1 : 0]} ${effect.says}`;
}

function foodStanding(plate: Plate, names: readonly string[], foodG: number): Standing {
  const here = plate.foods.filter((food) => food.names.some((name) => names.some((wanted) => name.includes(wanted))));
  if (here.length === 0) return 'fails';
  if (here.some((food) => food.portionG === null)) return 'unknown';
  return here.reduce((sum, food) => sum + (food.portionG ?? 0), 0) >= foodG ? 'holds' : 'fails';
}

function judgeRule(rule: HealthRule, law: LawId, input: NutritionInput, nutrition: readonly NutritionFinding[]): Judged {
  if (rule.condition === 'source') {
    const source = nutrition.find((f) => f.law === law && f.nutrient === rule.nutrient && f.rule.claim === 'source');
    return source?.judged ?? { standing: 'unknown', by: [] };
  }
  if ('foodG' in rule.condition) return { standing: foodStanding(input.plate, rule.food ?? [], rule.condition.foodG), by: [] };
  const subject = isNutrientId(rule.nutrient) ? rule.nutrient : null;
  return judgeCondition(rule.condition, { plate: input.plate, law, subject, references: input.references, other: input.other });
}

function relevanceOf(rule: HealthRule, effect: HealthEffect, emphasis: Emphasis): number {
  const nutrientAt = emphasis.nutrients.indexOf(rule.nutrient);
  const byNutrient = nutrientAt < 0 ? 0 : 1 + 1 / (1 + nutrientAt);
  const topicAt = effect.topics.map((t) => emphasis.topics.indexOf(t)).filter((i) => i >= 0);
  const byTopic = topicAt.length === 0 ? 0 : 1 + 1 / (1 + Math.min(...topicAt));
  return byNutrient + byTopic;
}

const order: Record<Standing, number> = { holds: 0, estimate: 1, unknown: 2, fails: 3 };

/** Every permitted health claim with how its condition stands, those that hold first, then by nearness to the theme. */
export function healthFindings(law: LawId, input: NutritionInput, nutrition: readonly NutritionFinding[], about: { readonly rules: readonly HealthRule[]; readonly emphasis: Emphasis }): HealthFinding[] {
  return about.rules
    .flatMap((rule) => {
      const judged = judgeRule(rule, law, input, nutrition);
      return rule.effects.map((effect): HealthFinding => ({ law, rule, effect, sentence: healthSentence(rule, effect), judged, relevance: relevanceOf(rule, effect, about.emphasis) }));
    })
    .sort((a, b) => order[a.judged.standing] - order[b.judged.standing] || b.relevance - a.relevance);
}
