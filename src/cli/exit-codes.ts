import type { ErrorCode } from '../errors.ts';

/** Exit statuses of every command; the README lists them. */
export const exitCodes = { ok: 0, bug: 1, usage: 2, unreadable: 3, nothingRead: 4, store: 5 } as const;

/** The status for a failure. */
export function exitCodeOf(code: ErrorCode): number {
  switch (code) {
    case 'file-unreadable':
    case 'input-too-large':
      return exitCodes.unreadable;
    case 'store-unreadable':
    case 'not-built':
    case 'bad-table':
      return exitCodes.store;
    case 'bad-input':
    case 'bad-date':
    case 'unknown-nutrient':
    case 'unknown-life-stage':
    case 'unknown-food':
    case 'unknown-unit':
    case 'unknown-dish':
    case 'name-taken':
      return exitCodes.usage;
    case 'unknown-source':
      return exitCodes.bug;
  }
}
