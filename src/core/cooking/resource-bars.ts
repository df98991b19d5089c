import type { CookPlan } from './cook-plan.ts';
import { isActive } from './kitchen.ts';
import type { TalkTrack } from './talk-track.ts';

export interface Bar {
  /** Clock minutes; talk may fall between two. */
  readonly start: number;
  readonly end: number;
  readonly title: string;
  readonly dish: string | null;
  readonly kind: 'hands' | 'stay' | 'alone' | 'heating' | 'talk';
}

export interface BarRow {
  readonly id: string;
  readonly resource: 'cook' | 'ring' | 'oven' | 'waiting' | 'talk';
  /** Number of the cook or ring; lane of the oven. */
  readonly number: number;
  readonly bars: readonly Bar[];
}

/** Puts bars that overlap into lanes of their own. */
function lanes(bars: readonly Bar[]): Bar[][] {
  const rows: Bar[][] = [];
  for (const bar of [...bars].sort((a, b) => a.start - b.start)) {
    const row = rows.find((lane) => lane.at(-1)!.end <= bar.start);
    if (row) row.push(bar);
    else rows.push([bar]);
  }
  return rows;
}

/** The plan by resource over time: a row for each cook, each ring, the oven's shelves, what rests or stands by itself, and the talk. */
export function resourceBars(plan: CookPlan, talk: TalkTrack | null): readonly BarRow[] {
  const cooks = new Map<number, Bar[]>();
  const rings = new Map<number, Bar[]>();
  const oven: Bar[] = plan.oven.map((change) => ({ start: change.minute, end: change.hotAt, title: `${change.celsius} °C`, dish: null, kind: 'heating' as const }));
  const rest: Bar[] = [];
  const add = (rows: Map<number, Bar[]>, number: number, bar: Bar): void => {
    rows.set(number, [...(rows.get(number) ?? []), bar]);
  };
  for (const { step, dish, start, end, pieces, ring } of plan.steps) {
    const kind = step.attention.kind === 'stir' ? 'stay' : step.attention.kind === 'hands' ? 'hands' : 'alone';
    const bar: Bar = { start, end, title: step.title, dish, kind };
    for (const piece of pieces) for (const cook of piece.cooks) add(cooks, cook, { ...bar, start: piece.start, end: piece.end });
    if (ring !== null) add(rings, ring, bar);
    if (step.oven) oven.push(bar);
    if (!isActive(step) && ring === null && !step.oven) rest.push(bar);
  }
  const rows = (map: Map<number, Bar[]>, resource: 'cook' | 'ring'): BarRow[] => [...map].sort(([a], [b]) => a - b).map(([number, bars]) => ({ id: `${resource} ${number}`, resource, number, bars }));
  const spoken: Bar[] = (talk?.spoken ?? []).map((line) => ({ start: line.start / 60, end: line.end / 60, title: line.paragraph.text, dish: null, kind: 'talk' as const }));
  return [
    ...rows(cooks, 'cook'),
    ...rows(rings, 'ring'),
    ...lanes(oven).map((bars, i): BarRow => ({ id: `oven ${i + 1}`, resource: 'oven', number: i + 1, bars })),
    ...lanes(rest).map((bars, i): BarRow => ({ id: `waiting ${i + 1}`, resource: 'waiting', number: i + 1, bars })),
    ...(spoken.length > 0 ? [{ id: 'talk', resource: 'talk' as const, number: 1, bars: spoken }] : []),
  ];
}
