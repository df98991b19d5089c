export * from './life-stage.ts';
export * from './life-state.ts';
export * from './read-facts.ts';
export * from './reference-intake.ts';
export * from './safety-bounds.ts';
