export * from './distribution.ts';
export * from './model.ts';
export * from './parameters.ts';
export * from './posterior.ts';
export * from './predict.ts';
export * from './prior.ts';
