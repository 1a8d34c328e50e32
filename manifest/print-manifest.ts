import { buildManifest } from './manifest.ts';

/** Writes the manifest as JSON: for Socket Mode, or for HTTP with the address given as the one argument. */
const [requestUrl] = process.argv.slice(2);
const manifest = buildManifest(requestUrl === undefined ? { kind: 'socket' } : { kind: 'http', requestUrl });
process.stdout.write(`${JSON.stringify(manifest, undefined, 2)}\n`);
