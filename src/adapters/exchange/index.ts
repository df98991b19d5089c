export * from './read-anything.ts';
export * from './read-page.ts';
export * from './page-text.ts';
