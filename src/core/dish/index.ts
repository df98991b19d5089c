export * from './recipe.ts';
