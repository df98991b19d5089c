import type { PlannedStep } from './cook-plan.ts';

export type AnchorKind = 'while' | 'before' | 'after' | 'start' | 'serving';

export interface Anchor {
  readonly kind: AnchorKind;
  readonly words: string;
  /** Null when no step answers to the words. */
  readonly step: string | null;
  /** True when written in brackets, false when found in the paragraph's own words. */
  readonly asked: boolean;
}

export interface Paragraph {
  readonly number: number;
  readonly text: string;
  readonly words: number;
  readonly anchor: Anchor | null;
}

const idle = new Set(['the', 'a', 'an', 'is', 'are', 'it', 'its', 'goes', 'go', 'in', 'on', 'to', 'into', 'and', 'of', 'we', 'i', 'you', 'my', 'your', 'our', 'that', 'this', 'at', 'with', 'for', 'up', 'out', 'while', 'before', 'after', 'as', 'has', 'have', 'been', 'be', 'let', 'minutes', 'comes', 'starts', 'does']);

/** The part of a word that its forms share, roughly: roasts, roasting, roasted → roast. */
function stem(word: string): string {
  const plain = word.toLowerCase().replace(/[^a-zà-ÿ]/g, '');
  const cut = plain.replace(/(?:ing|ed|es|s)$/, '');
  return cut.length >= 3 ? cut.replace(/([bdgklmnprt])\1$/, '$1').replace(/e$/, '') : plain;
}

const stems = (text: string): string[] => text.split(/[\s,-]+/).filter((word) => !idle.has(word.toLowerCase())).map(stem).filter((word) => word.length > 1);

/** The step that shares most words with the phrase; null when none shares any. The dish's own name counts half. */
export function stepCalled(words: string, steps: readonly PlannedStep[], dishNames: ReadonlyMap<string, string>): string | null {
  const wanted = stems(words);
  let best: { id: string; score: number } | null = null;
  for (const { step, dish } of steps) {
    const title = new Set(stems(step.title));
    const name = new Set(stems(dishNames.get(dish) ?? ''));
    const score = wanted.reduce((sum, word) => sum + (title.has(word) ? 1 : name.has(word) ? 0.4 : 0), 0);
    if (score > (best?.score ?? 0.9)) best = { id: step.id, score };
  }
  return best?.id ?? null;
}

/**
 * Paragraphs of a script, parted by blank lines. An anchor is written in brackets at the start ("[while the beetroot roasts]",
 * "[before the fish goes in]", "[after …]", "[at the start]", "[at serving]") or taken from the first words of the paragraph.
 */
export function readScript(text: string, steps: readonly PlannedStep[], dishNames: ReadonlyMap<string, string>): readonly Paragraph[] {
  const blocks = text.split(/\r?\n\s*\r?\n/).map((block) => block.replace(/\s+/g, ' ').trim()).filter((block) => block !== '');
  return blocks.flatMap((block, index): Paragraph[] => {
    const bracket = /^\[([^\]]+)\]\s*/.exec(block);
    const said = bracket ? block.slice(bracket[0].length) : block;
    const words = said.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
    if (words === 0) return [];
    const lead = /^(while|as|before|after|once)\s+([^,.;:!?]{3,60})[,.;:!?]/i.exec(said);
    const phrase = bracket ? bracket[1]! : lead ? `${lead[1]} ${lead[2]}` : null;
    return [{ number: index + 1, text: said, words, anchor: phrase === null ? null : anchorOf(phrase, bracket !== null) }];
  });

  function anchorOf(phrase: string, asked: boolean): Anchor | null {
    const words = phrase.trim();
    if (/^(at )?(the )?(start|beginning|opening)$/i.test(words)) return { kind: 'start', words, step: null, asked };
    if (/^(at |while |before )?(the )?(serving|end|table)$/i.test(words)) return { kind: 'serving', words, step: null, asked };
    const match = /^(while|as|during|before|after|once)[:\s]+(.+)$/i.exec(words);
    const first = match?.[1]?.toLowerCase();
    const kind: AnchorKind = first === 'before' ? 'before' : first === 'after' || first === 'once' ? 'after' : 'while';
    const step = stepCalled(match?.[2] ?? words, steps, dishNames);
    return step === null && !asked ? null : { kind, words, step, asked };
  }
}
