import { listed } from './numbers.ts';

/** "Contains milk and celery. May contain mustard. Look at your packets." Nothing found is told as that, never as "free from". */
export function allergenLineText(found: { readonly contains: readonly string[]; readonly may: readonly string[]; readonly unknown: readonly string[] }): string {
  const parts = [
    found.contains.length > 0 ? `Allergens: contains ${listed(found.contains)}.` : 'Allergens: no listed one was found for sure in the foods named.',
    ...(found.may.length > 0 ? [`May contain ${listed(found.may)}.`] : []),
    ...(found.unknown.length > 0 ? [`Not known: ${listed(found.unknown)}.`] : []),
    'Look at your packets.',
  ];
  return parts.join(' ');
}
