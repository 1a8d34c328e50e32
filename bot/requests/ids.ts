import { z } from 'zod';

/*
 * Ids, stamps and times as the workspace makes them. A payload may have parts this app does not read, since
 * the platform adds some; each part it reads has one of these shapes or counts as unreadable.
 */

export const personId = z.string().regex(/^[UW][A-Z0-9]{1,40}$/);
/** A channel, a private one, or a direct message. */
export const placeId = z.string().regex(/^[CDG][A-Z0-9]{1,40}$/);
/** A user group. */
export const groupId = z.string().regex(/^S[A-Z0-9]{1,40}$/);
export const teamId = z.string().regex(/^[TE][A-Z0-9]{1,40}$/);
export const stamp = z.string().regex(/^\d{1,12}\.\d{1,12}$/);
export const triggerId = z.string().min(1).max(200);
/** `HH:MM`. */
export const timeOfDay = z.string().regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/);
