import { existsSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { commands, shortcuts } from '../../bot/ids.ts';
import { buildManifest, type ManifestDelivery } from '../../manifest/manifest.ts';
import { scopeReasons } from '../../manifest/scopes.ts';

const deliveries: readonly ManifestDelivery[] = [
  { kind: 'socket' },
  { kind: 'http', requestUrl: 'https://evenset.example/slack/events' },
];
const publishedSchema = new URL('../../../shared/reference/manifest.schema.2.0.0.json', import.meta.url);

describe('the manifest', () => {
  test('declares exactly the commands and shortcuts that have a name in the app', () => {
    const { features } = buildManifest({ kind: 'socket' });
    expect(features?.slash_commands?.map(({ command }) => command)).toEqual(Object.values(commands));
    expect(features?.shortcuts?.map(({ callback_id }) => callback_id)).toEqual(Object.values(shortcuts));
  });

  test('asks for each scope once, with its reason', () => {
    const scopes = scopeReasons.map(({ scope }) => scope);
    expect(new Set(scopes).size).toBe(scopes.length);
    expect(buildManifest({ kind: 'socket' }).oauth_config?.scopes).toEqual({ bot: scopes });
    expect(scopeReasons.filter(({ reason }) => reason.length < 20)).toEqual([]);
  });

  test('names the address in each place that needs one, over HTTP alone', () => {
    const addressesIn = (delivery: ManifestDelivery) =>
      JSON.stringify(buildManifest(delivery)).split('https://evenset.example/slack/events').length - 1;
    expect(deliveries.map(addressesIn)).toEqual([0, 3]);
    expect(deliveries.map((each) => buildManifest(each).settings?.socket_mode_enabled)).toEqual([
      true,
      false,
    ]);
  });

  test.skipIf(!existsSync(publishedSchema)).each(deliveries)(
    'is accepted by the published schema ($kind)',
    (delivery) => {
      const validate = new Ajv({ strict: false, allErrors: true, validateFormats: false }).compile(
        JSON.parse(readFileSync(publishedSchema, 'utf8')),
      );
      validate(buildManifest(delivery));
      expect(validate.errors ?? []).toEqual([]);
      expect(validate({ display_information: {} })).toBe(false);
    },
  );
});
