import type { MenuChangeItem } from '../core/cycle/index.ts';

/** One item before and after a change of menu, with the honest answer when there is too little. */
export function menuChangeText(item: MenuChangeItem): string {
  if (item.kind === 'too-few') return `${item.item}: too few cycles to compare (${item.before} before the change, ${item.after} after; at least ${item.needed} on each side are needed).`;
  return `${item.item}: ${item.difference <= 0 ? '' : '+'}${item.difference.toFixed(1)} points after the change (95 % ${item.low.toFixed(1)} to ${item.high.toFixed(1)}; chance ${item.adjusted.toFixed(2)} after allowing for all items): ${item.clear ? 'more than chance, but not proof of the menu' : 'it may well be chance'}.`;
}
