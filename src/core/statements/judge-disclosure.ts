import { nutrient as nutrientOf } from '../foods/index.ts';
import type { LevelFinding } from './disclosure-levels.ts';
import type { LawGround } from './law-ground.ts';
import type { LawVerdict, Reason } from './verdict.ts';

function reasonOf(finding: LevelFinding, code: string): Reason {
  const { nutrient, limit, per, found } = finding;
  return { code, data: { nutrient, unit: nutrientOf(nutrient).unit, limit, per, value: found?.value ?? null, high: found?.high ?? null } };
}

/**
 * 21 CFR 101.13(h): what must stand beside a nutrient content claim of a food above the levels. Words
 * that turn out needless harm nobody, so a level that may be passed, or of which nothing is known, asks
 * for them too. A verdict that does not let the claim be said stays as it is.
 */
export function withDisclosure(verdict: LawVerdict, ground: LawGround): LawVerdict {
  const asked = ground.levels.filter((f) => f.standing !== 'under');
  if (asked.length === 0 || !['say', 'say-with', 'near'].includes(verdict.kind)) return verdict;
  return {
    ...verdict,
    kind: verdict.kind === 'say' ? 'say-with' : verdict.kind,
    clauses: [...verdict.clauses, 'us-101-13-h'],
    reasons: [...verdict.reasons, ...asked.map((f) => reasonOf(f, `disclose-${f.standing}`))],
    disclose: asked.map((f) => f.nutrient),
  };
}

/** 21 CFR 101.14(a)(4) and (e)(3): above the levels even a listed health claim is ruled out. */
export function withDisqualified(verdict: LawVerdict, ground: LawGround): LawVerdict {
  const over = ground.levels.filter((f) => f.standing === 'over' || f.standing === 'likely');
  if (over.length === 0) return verdict;
  return { ...verdict, clauses: [...verdict.clauses, 'us-101-14-a-4'], reasons: [...verdict.reasons, ...over.map((f) => reasonOf(f, 'disqualified'))] };
}
