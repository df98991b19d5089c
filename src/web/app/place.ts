import { useSyncExternalStore } from 'react';

/** Where she is on the desk, read from the address after `#`. */
export type Place = { readonly page: 'dish'; readonly id: string | null } | { readonly page: OtherPage };

const otherPages = ['cook', 'saved', 'own-foods', 'settings'] as const;
type OtherPage = (typeof otherPages)[number];

function placeOf(hash: string): Place {
  const [page, id] = hash.replace(/^#\/?/, '').split('/');
  const other = otherPages.find((name) => name === page);
  if (other) return { page: other };
  return { page: 'dish', id: page === 'dish' && id ? decodeURIComponent(id) : null };
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
  return place.page === 'dish' ? (place.id === null ? '#/' : `#/dish/${encodeURIComponent(place.id)}`) : `#/${place.page}`;
}

export function goTo(place: Place): void {
  window.location.hash = addressOf(place);
}
