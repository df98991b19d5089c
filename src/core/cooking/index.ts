export type * from './solve/plan-model.ts';
export { earliestEnd, objectiveValue } from './solve/plan-model.ts';
export { checkPlan, type PlanBreach } from './solve/check-plan.ts';
export { minimise } from './solve/minimise.ts';
