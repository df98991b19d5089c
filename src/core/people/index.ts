export * from './life-stage.ts';
export * from './reference-intake.ts';
