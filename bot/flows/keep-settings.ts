import { extendCatalogue } from '../../domain/catalogue/extend-catalogue.ts';
import type { Settings } from '../../domain/settings.ts';
import type { Desk } from '../handling.ts';

/**
 * Saves what was set in the workspace and returns a desk that knows it. The fingerprint of the settings file
 * stays: the file is applied again only when it changes.
 */
export async function keepSettings(desk: Desk, settings: Settings): Promise<Desk> {
  const stored = await desk.stores.settings.find(desk.studioId);
  await desk.stores.settings.save(desk.studioId, settings, stored?.fingerprint ?? '', desk.now);
  const ownNames = new Map(Object.entries(settings.ownNames));
  return { ...desk, settings, catalogue: extendCatalogue(desk.catalogue, settings.ownMoves, ownNames) };
}
