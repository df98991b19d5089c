import type { CookPlan, PlannedStep } from './cook-plan.ts';
import { looksOf } from './looks.ts';
import type { TalkTrack } from './talk-track.ts';

export type Deed =
  | { readonly kind: 'oven'; readonly celsius: number }
  | { readonly kind: 'start'; readonly step: PlannedStep; readonly cooks: readonly number[] }
  | { readonly kind: 'go-on'; readonly step: PlannedStep; readonly cooks: readonly number[] }
  | { readonly kind: 'look'; readonly step: PlannedStep }
  | { readonly kind: 'over'; readonly step: PlannedStep }
  | { readonly kind: 'serve'; readonly dishes: readonly string[] };

export interface SheetRow {
  /** Clock minute. */
  readonly minute: number;
  /** Minutes until the next serving. */
  readonly toServing: number;
  readonly deeds: readonly Deed[];
  readonly says: readonly { readonly start: number; readonly seconds: number; readonly text: string; readonly paragraph: number }[];
}

const rank: Readonly<Record<Deed['kind'], number>> = { over: 0, look: 1, oven: 2, start: 3, 'go-on': 4, serve: 5 };

/** The two-column running sheet: minute by minute what to do and what to say. */
export function runningSheet(plan: CookPlan, talk: TalkTrack | null, cooks: number): readonly SheetRow[] {
  const rows = new Map<number, { deeds: Deed[]; says: SheetRow['says'][number][] }>();
  const at = (minute: number): { deeds: Deed[]; says: SheetRow['says'][number][] } => {
    const row = rows.get(minute) ?? { deeds: [], says: [] };
    rows.set(minute, row);
    return row;
  };
  const byId = new Map(plan.steps.map((step) => [step.step.id, step]));
  for (const change of plan.oven) at(change.minute).deeds.push({ kind: 'oven', celsius: change.celsius });
  for (const step of plan.steps) {
    step.pieces.forEach((piece, i) => {
      const joined = i > 0 && step.pieces[i - 1]!.end === piece.start;
      if (i === 0) at(piece.start).deeds.push({ kind: 'start', step, cooks: piece.cooks });
      else if (!joined) at(piece.start).deeds.push({ kind: 'go-on', step, cooks: piece.cooks });
    });
    const alone = step.step.attention.kind === 'none' || step.step.attention.kind === 'glance';
    if (alone) at(step.end).deeds.push({ kind: 'over', step });
  }
  for (const look of looksOf(plan.steps, cooks)) at(look.minute).deeds.push({ kind: 'look', step: byId.get(look.step)! });
  for (const serving of plan.servings) at(serving.minute).deeds.push({ kind: 'serve', dishes: serving.dishes });
  for (const line of talk?.spoken ?? []) at(Math.floor(line.start / 60)).says.push({ start: line.start, seconds: line.end - line.start, text: line.paragraph.text, paragraph: line.paragraph.number });
  return [...rows].sort(([a], [b]) => a - b).map(([minute, row]) => ({
    minute,
    toServing: Math.max(0, (plan.servings.find((serving) => serving.minute >= minute) ?? plan.servings.at(-1)!).minute - minute),
    deeds: row.deeds.sort((a, b) => rank[a.kind] - rank[b.kind]),
    says: row.says.sort((a, b) => a.start - b.start),
  }));
}
