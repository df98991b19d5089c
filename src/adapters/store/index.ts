export * from './embedded.ts';
