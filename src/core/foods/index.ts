export * from './nutrient.ts';
export * from './value.ts';
export * from './food.ts';
export * from './food-table.ts';
export * from './kitchen-name.ts';
export * from './own-food.ts';
