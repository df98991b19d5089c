export type * from './brand.ts';
export * from './make.ts';
export * from './random.ts';
export * from './interval.ts';
export * from './units.ts';
