import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { AppError, type ErrorCode } from '../errors.ts';
import { errorText } from '../messages/errors.ts';

const statuses: Partial<Record<ErrorCode, ContentfulStatusCode>> = {
  'unknown-food': 404,
  'unknown-dish': 404,
  'name-taken': 409,
  'input-too-large': 413,
  'store-unreadable': 500,
  'not-built': 500,
  'bad-table': 500,
  'unknown-source': 500,
  'unknown-unit': 500,
};

/** A failure as a problem body (RFC 9457): title in words, code for programs. Bugs are told as such, without their insides. */
export function problem(context: Context, error: unknown): Response {
  const known = error instanceof AppError;
  const status = known ? (statuses[error.code] ?? 400) : 500;
  const title = known ? errorText(error) : 'Something in Truepot itself went wrong. Nothing that was saved is lost. Try once more; if it happens again, keep the text that you pasted.';
  if (!known) console.error(error instanceof Error ? error.stack : error);
  return context.json({ title, status, code: known ? error.code : 'bug' }, status, { 'content-type': 'application/problem+json' });
}
