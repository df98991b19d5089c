import type { ClaimClass } from './claim.ts';
import { beginsClaim, beginTag, classOfTag, goOnTag, noClaim, spokenFor } from './claim-tags.ts';
import type { ClaimReader } from './claim-reader.ts';
import type { ReadSentence } from './phrase-pattern.ts';
import type { FoundClaim } from './relations.ts';
import type { Sign } from './signs.ts';
import { isSmallWord } from './small-words.ts';
import { bestTags, classChances } from './tag-words.ts';

/** A claim as the fitted reader sees it; tokens `start` to `end` (excluded). */
export interface SeenClaim {
  readonly class: ClaimClass;
  readonly start: number;
  readonly end: number;
  /** How sure the reading is, 0 to 1: the mean chance of its class over its words. */
  readonly chance: number;
  /** Its words that speak most for the class, strongest first. */
  readonly because: readonly string[];
}

// A stretch takes in words beside it that probably belong to it, and must be probable itself.
const joinsAt = 0.3;
const standsAt = 0.4;
// Turns of phrase are a second opinion: they stand where the reader gives them some chance. One that speaks of illness stands even
// where it gives little: missing it can harm, a needless warning cannot.
const turnStandsAt = 0.3;
const illnessStandsAt = 0.1;
const mostReasons = 3;

interface Stretch {
  readonly kind: number;
  start: number;
  end: number;
}

function stretchesOf(tags: readonly number[]): Stretch[] {
  const found: Stretch[] = [];
  tags.forEach((tag, i) => {
    const kind = classOfTag(tag);
    const last = found.at(-1);
    if (kind === 0) return;
    if (last && last.end === i && last.kind === kind && !beginsClaim(tag)) last.end = i + 1;
    else found.push({ kind, start: i, end: i + 1 });
  });
  return found;
}

/** Claims of a sentence as the reader sees them, in order; `turns` are those of the turns of phrase and relations. */
export function seenClaims(sentence: ReadSentence, signs: readonly (readonly Sign[])[], { reader, turns }: { readonly reader: ClaimReader; readonly turns: readonly FoundClaim[] }): SeenClaim[] {
  if (sentence.tokens.length === 0) return [];
  const scores = reader.scores(sentence.tokens.map((t) => t.word), signs);
  const tags = bestTags(scores, reader.order);
  const stretches = stretchesOf(tags);
  if (stretches.length === 0 && turns.length === 0) return [];
  const chances = classChances(scores, reader.order);
  const chance = (i: number, kind: number): number => chances[i]?.[kind] ?? 0;
  const taken = tags.map((tag) => classOfTag(tag) !== 0);
  for (const s of stretches) {
    while (s.start > 0 && taken[s.start - 1] === false && chance(s.start - 1, s.kind) >= joinsAt) taken[--s.start] = true;
    while (s.end < tags.length && taken[s.end] === false && chance(s.end, s.kind) >= joinsAt) taken[s.end++] = true;
  }
  const meanOf = ({ kind, start, end }: Stretch): number => {
    let sum = 0;
    for (let i = start; i < end; i++) sum += chance(i, kind);
    return sum / (end - start);
  };
  const standing = stretches.filter((s) => meanOf(s) >= standsAt);
  for (const { class: name, start, end } of turns) {
    const turn = { kind: spokenFor.indexOf(name), start, end };
    if (meanOf(turn) >= (name === 'disease' ? illnessStandsAt : turnStandsAt) && !standing.some((s) => s.start < end && start < s.end)) standing.push(turn);
  }
  return standing.sort((a, b) => a.start - b.start).flatMap((stretch): SeenClaim[] => {
    const { kind, start, end } = stretch;
    const places = Array.from({ length: end - start }, (_, i) => start + i);
    const telling = places.filter((i) => sentence.tokens[i]?.kind !== 'mark' && !isSmallWord(sentence.tokens[i]?.word ?? ''));
    const name = spokenFor[kind];
    if (telling.length === 0 || name === undefined || name === noClaim) return [];
    const speaks = (i: number): number => Math.max(scores[i]?.[beginTag(kind)] ?? 0, scores[i]?.[goOnTag(kind)] ?? 0) - (scores[i]?.[0] ?? 0);
    const because = [...telling].sort((a, b) => speaks(b) - speaks(a)).slice(0, mostReasons).map((i) => sentence.tokens[i]?.text ?? '');
    return [{ class: name, start, end, chance: meanOf(stretch), because }];
  });
}
