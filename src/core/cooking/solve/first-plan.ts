import { seededRandom } from '../../quantity/index.ts';
import { objectiveValue, type PlanModel, type PlanObjective } from './plan-model.ts';

/** Enough draws for projects of thirty activities; the exact search takes over from there. */
const draws = 60;

interface Project {
  readonly model: PlanModel;
  readonly duration: readonly number[];
  readonly into: readonly (readonly { from: number; ticks: number }[])[];
  readonly uses: readonly (readonly { resource: number; demand: number }[])[];
  readonly tail: readonly number[];
}

/** Null unless the puzzle is a plain project: end-to-start lags, uses of single activities, nothing else. */
function projectOf(model: PlanModel): Project | null {
  const plain =
    model.choices.length === 0 && model.limits.length === 0 && model.lags.every((lag) => lag.ticks >= 0) &&
    model.uses.every((use) => use.from === use.to && use.demand <= model.resources[use.resource]!.capacity);
  if (!plain) return null;
  const count = model.activities.length;
  const duration = model.activities.map((activity) => activity.duration);
  const into: { from: number; ticks: number }[][] = Array.from({ length: count }, () => []);
  const uses: { resource: number; demand: number }[][] = Array.from({ length: count }, () => []);
  for (const lag of model.lags) into[lag.to]!.push({ from: lag.from, ticks: lag.ticks });
  for (const use of model.uses) uses[use.from]!.push({ resource: use.resource, demand: use.demand });
  const tail = [...duration];
  for (let changed = true; changed; ) {
    changed = false;
    for (const lag of model.lags) {
      const longer = lag.ticks + tail[lag.to]!;
      if (longer > tail[lag.from]! && longer < 1e7) {
        tail[lag.from] = longer;
        changed = true;
      }
    }
  }
  return { model, duration, into, uses, tail };
}

/** Serial schedule generation (Kelley 1963): in the order of the list, each as early as lags and resources let it. Null past the horizon. */
function serial(project: Project, key: readonly number[]): number[] | null {
  const { model, duration, into, uses } = project;
  const count = duration.length;
  const starts = new Array<number>(count).fill(-1);
  const used = model.resources.map(() => new Int32Array(model.horizon * 2 + 2));
  for (let placed = 0; placed < count; placed += 1) {
    let next = -1;
    for (let i = 0; i < count; i += 1) {
      if (starts[i]! >= 0 || into[i]!.some((lag) => starts[lag.from]! < 0)) continue;
      if (next < 0 || key[i]! < key[next]!) next = i;
    }
    if (next < 0) return null;
    let at = into[next]!.reduce((most, lag) => Math.max(most, starts[lag.from]! + lag.ticks), model.activities[next]!.earliest);
    for (let free = false; !free; ) {
      free = true;
      for (const { resource, demand } of uses[next]!) {
        for (let t = at + duration[next]! - 1; t >= at; t -= 1) {
          if (used[resource]![t]! + demand <= model.resources[resource]!.capacity) continue;
          at = t + 1;
          free = false;
          break;
        }
      }
      if (at > model.activities[next]!.latest || at > model.horizon) return null;
    }
    for (const { resource, demand } of uses[next]!) for (let t = at; t < at + duration[next]!; t += 1) used[resource]![t]! += demand;
    starts[next] = at;
  }
  return starts;
}

/** The project with its arcs turned round, for justification to the right. */
function turned(project: Project): Project {
  const { model, duration } = project;
  const into: { from: number; ticks: number }[][] = duration.map(() => []);
  for (const lag of model.lags) into[lag.from]!.push({ from: lag.to, ticks: lag.ticks - duration[lag.from]! + duration[lag.to]! });
  const activities = model.activities.map((activity) => ({ ...activity, earliest: 0, latest: model.horizon }));
  return { ...project, model: { ...model, activities }, into };
}

/**
 * A good first plan for a plain project: list schedules by longest tail and drawn variants of it, each justified to the right and back
 * (Valls, Ballestín & Quintanilla 2005). Null when the puzzle is of another kind.
 */
export function firstPlan(model: PlanModel, objective: PlanObjective): number[] | null {
  const project = projectOf(model);
  if (!project || objective.terms.some((term) => term.weight < 0)) return null;
  const back = turned(project);
  const random = seededRandom(1);
  let best: number[] | null = null;
  const keep = (starts: number[] | null): number[] | null => {
    if (starts && (!best || objectiveValue(objective, starts) < objectiveValue(objective, best))) best = starts;
    return starts;
  };
  for (let draw = 0; draw < draws; draw += 1) {
    const spread = draw === 0 ? 0 : 12;
    let starts = keep(serial(project, project.tail.map((tail) => -tail + spread * random.uniform())));
    for (let round = 0; round < 2 && starts; round += 1) {
      const right = serial(back, starts.map((at, i) => -(at + project.duration[i]!)));
      starts = right ? keep(serial(project, right.map((at, i) => -(at + project.duration[i]!)))) : null;
    }
  }
  return best;
}
