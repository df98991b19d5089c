import { compileSources } from './sources.ts';

/** The ids of every source listed under data/sources/. */
export const knownSources = (data: string): Set<string> => new Set(compileSources(data).map(({ id }) => id));
