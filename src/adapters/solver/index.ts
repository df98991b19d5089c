export * from './psplib.ts';
export * from './watch.ts';
