export * from './bound-scheme.ts';
export * from './compare-fixed.ts';
export * from './edit-scheme.ts';
export * from './lay-scheme.ts';
export * from './read-scheme.ts';
export * from './scheme.ts';
export * from './windows.ts';
