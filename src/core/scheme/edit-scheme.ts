import { readScheme, type SchemeProblem } from './read-scheme.ts';
import type { Scheme, SchemeRule } from './scheme.ts';

/** One change made in the scheme editor. */
export type SchemeEdit =
  | { readonly kind: 'rename'; readonly name: string; readonly about: string }
  | { readonly kind: 'set-textbook'; readonly length: number; readonly ovulationDay: number }
  | { readonly kind: 'set-say-from'; readonly sayFrom: number }
  | { readonly kind: 'put-rule'; readonly rule: SchemeRule }
  | { readonly kind: 'remove-rule'; readonly id: string }
  | { readonly kind: 'move-rule'; readonly id: string; readonly to: number };

function changed(scheme: Scheme, edit: SchemeEdit): Scheme {
  switch (edit.kind) {
    case 'rename':
      return { ...scheme, name: edit.name, about: edit.about };
    case 'set-textbook':
      return { ...scheme, textbook: { length: edit.length, ovulationDay: edit.ovulationDay } };
    case 'set-say-from':
      return { ...scheme, sayFrom: edit.sayFrom };
    case 'put-rule': {
      const known = scheme.rules.some((r) => r.id === edit.rule.id);
      return { ...scheme, rules: known ? scheme.rules.map((r) => (r.id === edit.rule.id ? edit.rule : r)) : [...scheme.rules, edit.rule] };
    }
    case 'remove-rule':
      return { ...scheme, rules: scheme.rules.filter((r) => r.id !== edit.id) };
    case 'move-rule': {
      const moving = scheme.rules.find((r) => r.id === edit.id);
      if (!moving) return scheme;
      const rest = scheme.rules.filter((r) => r.id !== edit.id);
      return { ...scheme, rules: rest.toSpliced(Math.max(0, Math.min(rest.length, edit.to)), 0, moving) };
    }
  }
}

/** The scheme after an edit, or the problems that the edit would make; the old scheme is never touched. */
export function editScheme(scheme: Scheme, edit: SchemeEdit): { scheme: Scheme | null; problems: readonly SchemeProblem[] } {
  return readScheme(changed(scheme, edit));
}
