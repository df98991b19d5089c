import type { CookPlan } from './cook-plan.ts';
import { finalSteps } from './kitchen-model.ts';
import { isActive, type CookRequest } from './kitchen.ts';

/** Minute by minute, straight from the plan and the request: what is impossible in it. Written apart from the model. */
export function impossible(plan: CookPlan, request: CookRequest): string[] {
  const wrong: string[] = [];
  const { kitchen } = request;
  for (let minute = plan.begin; minute < plan.end; minute += 1) {
    const running = plan.steps.filter((step) => step.start <= minute && minute < step.end);
    const pieces = plan.steps.flatMap((step) => step.pieces.filter((piece) => piece.start <= minute && minute < piece.end).map((piece) => ({ step, piece })));
    const cooks = pieces.flatMap(({ step, piece }) => (isActive(step.step) ? piece.cooks : []));
    if (new Set(cooks).size !== cooks.length || cooks.some((cook) => cook > kitchen.cooks)) wrong.push(`${minute}: one cook does two things`);
    for (const { step, piece } of pieces) if (isActive(step.step) && piece.cooks.length !== step.step.cooks) wrong.push(`${minute}: nobody does ${step.step.id}`);
    const rings = running.filter((step) => step.step.ring).map((step) => step.ring);
    if (rings.some((ring) => ring === null) || new Set(rings).size !== rings.length || rings.length > kitchen.rings) wrong.push(`${minute}: rings ${rings.join()}`);
    const inOven = running.filter((step) => step.step.oven);
    if (new Set(inOven.map((step) => step.ovenCelsius)).size > 1) wrong.push(`${minute}: two temperatures in one oven`);
    if (inOven.reduce((sum, step) => sum + step.step.oven!.shelves, 0) > kitchen.shelves) wrong.push(`${minute}: shelves`);
    for (const [place, have] of Object.entries(kitchen.places)) if (running.filter((step) => step.step.places.includes(place as 'board')).length > have) wrong.push(`${minute}: ${place}`);
  }
  const byId = new Map(plan.steps.map((step) => [step.step.id, step]));
  for (const later of plan.steps) {
    for (const link of later.step.after) {
      const before = byId.get(link.step);
      if (!before) continue;
      const gap = later.start - before.end;
      if (gap < link.wait || (link.within !== null && gap > Math.max(link.within, link.wait))) wrong.push(`${link.step} → ${later.step.id}: ${gap} min`);
    }
  }
  for (const one of request.dishes) {
    const serving = plan.servings.find((s) => s.dishes.includes(one.id))!;
    for (const step of finalSteps(one.steps)) {
      const wait = serving.minute - byId.get(step.id)!.end;
      if (wait < 0 || wait > one.hold) wrong.push(`${one.id} waits ${wait}`);
    }
  }
  for (const step of plan.steps) {
    if (step.step.attention.kind !== 'glance' || request.kitchen.cooks > 1) continue;
    const every = step.step.attention.everyMinutes;
    for (const other of plan.steps) if (other.step.attention.kind === 'stir' && Math.min(step.end, other.end) - Math.max(step.start, other.start) > every) wrong.push(`${step.step.id} unwatched during ${other.step.id}`);
  }
  if (request.kitchen.cooks === 1) {
    for (const alone of plan.steps.filter((step) => !isActive(step.step) && (step.step.ring || step.step.oven))) {
      for (const other of plan.steps) if (other.step.attention.kind === 'stir' && other.start < alone.start && alone.start < other.end) wrong.push(`${alone.step.id} is put on while she stirs ${other.step.id}`);
    }
  }
  return wrong;
}
