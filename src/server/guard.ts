import type { MiddlewareHandler } from 'hono';

const loopback = /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/;

/**
 * Lets in only this machine's own pages: the Host must be loopback (so that no outside name
 * can be pointed here) and a request that changes something must come from the same origin.
 */
export function ownPagesOnly(): MiddlewareHandler {
  return async (context, next) => {
    const host = context.req.header('host') ?? '';
    const origin = context.req.header('origin');
    const foreign = origin !== undefined && origin !== `http://${host}`;
    if (!loopback.test(host) || foreign) return context.json({ title: 'Truepot answers only pages that it serves itself on this machine.', status: 403, code: 'foreign' }, 403);
    await next();
    context.header('content-security-policy', "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; frame-ancestors 'none'; base-uri 'none'");
    context.header('x-content-type-options', 'nosniff');
    context.header('referrer-policy', 'no-referrer');
    return undefined;
  };
}
