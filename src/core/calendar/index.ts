export * from './day.ts';
