import { readFileSync, writeFileSync } from 'node:fs';
import { withDefaultsTable } from './defaults-table.ts';

const readme = new URL('../../README.md', import.meta.url);
writeFileSync(readme, withDefaultsTable(readFileSync(readme, 'utf8')));
