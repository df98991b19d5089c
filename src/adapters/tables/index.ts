export * from './folder.ts';
export * from './foods.ts';
