import { claimClasses, type ClaimClass } from './claim.ts';

export const noClaim = 'none';
/** What a word may belong to: no claim, or a claim of a class. */
export const spokenFor: readonly (ClaimClass | typeof noClaim)[] = [noClaim, ...claimClasses];
/** Tags of words by number: 0 no claim; 2c - 1 a claim of class c begins; 2c it goes on. */
export const tagCount = 2 * claimClasses.length + 1;
export const classOfTag = (tag: number): number => Math.ceil(tag / 2);
/** The tags of a class by its place in `spokenFor`. */
export const beginTag = (kind: number): number => 2 * kind - 1;
export const goOnTag = (kind: number): number => 2 * kind;
export const beginsClaim = (tag: number): boolean => tag % 2 === 1;
export const tagNames: readonly string[] = [noClaim, ...claimClasses.flatMap((c) => [`begin ${c}`, `in ${c}`])];
