/** The closed list of ways Truepot can fail. Expected outcomes are values, not errors. */
export type ErrorCode =
  | 'unknown-food'
  | 'unknown-nutrient'
  | 'unknown-unit'
  | 'unknown-source'
  | 'unknown-life-stage'
  | 'unknown-dish'
  | 'bad-date'
  | 'bad-table'
  | 'bad-input'
  | 'input-too-large'
  | 'file-unreadable'
  | 'store-unreadable'
  | 'name-taken'
  | 'not-built';

export type ErrorData = Readonly<Record<string, string | number | boolean | null>>;

/**
 * A failure with a code that the faces turn into words, an exit status or a problem body.
 * `data` holds what the message needs and never personal data.
 */
export class AppError extends Error {
  readonly code: ErrorCode;
  readonly data: ErrorData;

  constructor(code: ErrorCode, data: ErrorData = {}, cause?: unknown) {
    super(`${code} ${JSON.stringify(data)}`, cause === undefined ? undefined : { cause });
    this.name = 'AppError';
    this.code = code;
    this.data = data;
  }
}

/** Stops on a bug: a state that the code itself promised could not be. */
export function assert(condition: unknown, what: string): asserts condition {
  if (!condition) throw new Error(`Bug: ${what}`);
}
