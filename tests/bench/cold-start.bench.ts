import { execFileSync, spawn } from 'node:child_process';
import { beforeAll, bench, describe } from 'vitest';

const project = new URL('../..', import.meta.url).pathname;

/** Starts the bundle, waits until it says that it listens, and ends it. */
function listening(): Promise<void> {
  const child = spawn(process.execPath, ['dist/main.js'], {
    cwd: project,
    env: { PATH: process.env.PATH ?? '', PORT: '0' },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  return new Promise((resolve, reject) => {
    let said = '';
    let isListening = false;
    child.stderr.on('data', (chunk) => {
      said += String(chunk);
      if (!said.includes('http://') || isListening) return;
      isListening = true;
      child.kill('SIGKILL');
    });
    child.once('close', () => (isListening ? resolve() : reject(new Error(said))));
  });
}

beforeAll(() => {
  execFileSync('npm', ['run', '--silent', 'build'], { cwd: project });
});

describe('cold start', () => {
  const tenTimes = { iterations: 10, time: 0, warmupTime: 0 };

  bench('of the bundle with the demo studio, to listening', listening, tenTimes);

  bench(
    'of the runtime with nothing to run',
    () => void execFileSync(process.execPath, ['-e', '']),
    tenTimes,
  );
});
