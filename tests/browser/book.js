// The real program over a book of its own, started, asked and killed.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const PROGRAM =
  process.env.EAVEBOOK ?? fileURLToPath(new URL('../../target/debug/eavebook', import.meta.url));

/** A folder for a book, taken away when the test ends. */
export function newBook(t) {
  const folder = mkdtempSync(join(tmpdir(), 'eavebook-'));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Opens a book on a free port. Gives `url`, `ask(request)`, `kill()` and `ended`. */
export async function open(t, folder) {
  const program = spawn(PROGRAM, ['open', '--port', '0', '--book', folder]);
  const ended = new Promise((resolve) => program.once('exit', resolve).once('error', resolve));
  const kill = async () => {
    program.kill('SIGKILL');
    await ended;
  };
  t.after(kill);
  const url = await address(program);
  return { url, kill, ended, ask: (request) => ask(url, request) };
}

/** Adds the pretend house to a book. */
export async function addPretendHouse(folder) {
  const program = spawn(PROGRAM, ['demo', '--book', folder], { stdio: 'inherit' });
  const code = await new Promise((resolve) => program.once('exit', resolve));
  if (code !== 0) throw new Error(`demo ended with ${code}`);
}

function address(program) {
  return new Promise((resolve, reject) => {
    let said = '';
    let complained = '';
    program.stderr.on('data', (bytes) => (complained += bytes));
    program.stdout.on('data', (bytes) => {
      said += bytes;
      const found = /listening on (http:\/\/127\.0\.0\.1:\d+)/.exec(said);
      if (found) resolve(found[1]);
    });
    program.once('error', reject);
    program.once('exit', (code) => reject(new Error(`ended with ${code}: ${said}${complained}`)));
  });
}

async function ask(url, request) {
  const answer = await fetch(`${url}/command`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(request),
  });
  if (answer.status !== 200) throw new Error(`${answer.status}: ${await answer.text()}`);
  return answer.json();
}
