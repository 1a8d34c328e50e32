import { WebAPIPlatformError, WebAPIRateLimitedError } from '@slack/web-api';
import { codeOf } from '../log.ts';

/** How a call ended that did not succeed, by what may be done next. */
export type CallFailure =
  /** Nothing was done; ask again after the time given. */
  | { readonly kind: 'rate limited'; readonly seconds: number; readonly code: string }
  /** Nothing was done, and its blocks are why. */
  | { readonly kind: 'blocks refused'; readonly code: string }
  /** Nothing was done, and a repeat would end the same. */
  | { readonly kind: 'refused'; readonly code: string }
  /** Nothing was done; a later try may succeed. */
  | { readonly kind: 'not now'; readonly code: string }
  /** It may have been done or not: the answer was lost, or says nothing. */
  | { readonly kind: 'unclear'; readonly code: string };

const aboutBlocks = new Set([
  'invalid_blocks',
  'invalid_blocks_format',
  'msg_blocks_too_long',
  'blocks_too_long',
]);

/** The app's standing in the workspace, which an admin may mend, or the workspace's own pause. */
const passing = new Set([
  'ratelimited',
  'rate_limited',
  'message_limit_exceeded',
  'not_authed',
  'invalid_auth',
  'account_inactive',
  'token_revoked',
  'token_expired',
  'missing_scope',
  'ekm_access_denied',
  'org_login_required',
  'team_access_not_granted',
]);

const saysNothing = new Set(['internal_error', 'fatal_error', 'service_unavailable', 'request_timeout']);

export function readCallFailure(error: unknown): CallFailure {
  if (error instanceof WebAPIRateLimitedError)
    return { kind: 'rate limited', seconds: error.retryAfter, code: 'ratelimited' };
  if (!(error instanceof WebAPIPlatformError)) return { kind: 'unclear', code: codeOf(error) ?? 'no_answer' };
  const code = error.data.error;
  if (!/^[a-z][a-z_]*$/.test(code)) return { kind: 'unclear', code: 'unreadable_answer' };
  if (saysNothing.has(code)) return { kind: 'unclear', code };
  if (aboutBlocks.has(code)) return { kind: 'blocks refused', code };
  return { kind: passing.has(code) ? 'not now' : 'refused', code };
}
