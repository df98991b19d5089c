export * from './recipe.ts';
export * from './energy.ts';
export * from './servings.ts';
export * from './portion.ts';
export * from './correction.ts';
export * from './reading.ts';
export * from './caution.ts';
