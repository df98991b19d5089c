export * from './recipe.ts';
export * from './energy.ts';
export * from './servings.ts';
export * from './portion.ts';
export * from './correction.ts';
