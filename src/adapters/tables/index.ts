export * from './folder.ts';
export * from './foods.ts';
export * from './kitchen-names.ts';
export * from './reference.ts';
export * from './weighing.ts';
export * from './units.ts';
export * from './reader-words.ts';
export * from './dish-tables.ts';
