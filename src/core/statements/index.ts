export * from './law.ts';
export * from './clause.ts';
export * from './plate.ts';
export * from './condition.ts';
export * from './on-basis.ts';
export * from './judge-condition.ts';
export * from './nutrition-claims.ts';
export * from './health-claims.ts';
