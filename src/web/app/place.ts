import { useSyncExternalStore } from 'react';

/** Pages about one dish: the one in the pot (id null) or a saved one. */
export const dishPages = ['dish', 'change', 'say'] as const;
export const otherPages = ['cook', 'cycle', 'saved', 'own-foods', 'larder', 'settings'] as const;

/** Where she is on the desk, read from the address after `#`. */
export type Place = { readonly page: (typeof dishPages)[number]; readonly id: string | null } | { readonly page: (typeof otherPages)[number] };

function placeOf(hash: string): Place {
  const [page, id] = hash.replace(/^#\/?/, '').split('/');
  const other = otherPages.find((name) => name === page);
  if (other) return { page: other };
  return { page: dishPages.find((name) => name === page) ?? 'dish', id: id ? decodeURIComponent(id) : null };
}

function listen(changed: () => void): () => void {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
}

export function usePlace(): Place {
  const hash = useSyncExternalStore(listen, () => window.location.hash);
  return placeOf(hash);
}

export function addressOf(place: Place): string {
  if (!('id' in place)) return `#/${place.page}`;
  if (place.id === null) return place.page === 'dish' ? '#/' : `#/${place.page}`;
  return `#/${place.page}/${encodeURIComponent(place.id)}`;
}

export function goTo(place: Place): void {
  window.location.hash = addressOf(place);
}
