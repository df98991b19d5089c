export * from './folder.ts';
export * from './foods.ts';
export * from './reference.ts';
