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
export function open(t, folder) {
  return opened(t, ['--book', folder]);
}

/** Opens a book and shares it on this machine. */
export function openShared(t, folder) {
  return opened(t, ['--book', folder, '--hub', '--hub-listen', '127.0.0.1:0']);
}

/**
 * A hub on a free port, which it keeps. Gives `link()`, `typed()`, `kill()` and `start()` after a
 * kill.
 */
export async function hub(t, folder) {
  let program = null;
  let listen = '127.0.0.1:0';
  const start = async () => {
    program = spawn(PROGRAM, ['hub', '--listen', listen, '--dir', folder]);
    program.stderr.resume();
    const [, at] = await said(program, /listening on https:\/\/(\S+) pin/);
    listen = at;
  };
  const kill = async () => {
    const ended = new Promise((resolve) => program.once('exit', resolve));
    program.kill('SIGKILL');
    await ended;
  };
  t.after(() => program.kill('SIGKILL'));
  await start();
  const codes = async () => {
    const asks = spawn(PROGRAM, ['hub', 'code', '--company', 'Pretend Roofs', '--dir', folder]);
    const [, typed, link] = await said(asks, /^(\S+)\n(\S+)\n/);
    return { typed, link };
  };
  return {
    start,
    kill,
    link: async () => (await codes()).link,
    typed: async () => {
      const { typed, link } = await codes();
      return `${listen} ${typed} ${/pin=(.{12})/.exec(link)[1]}`;
    },
  };
}

async function opened(t, more) {
  const program = spawn(PROGRAM, ['open', '--port', '0', ...more]);
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

async function address(program) {
  return (await said(program, /listening on (http:\/\/127\.0\.0\.1:\d+)/))[1];
}

// What a program says, once it matches.
function said(program, wanted) {
  return new Promise((resolve, reject) => {
    let heard = '';
    let complained = '';
    program.stderr.on('data', (bytes) => (complained += bytes));
    program.stdout.on('data', (bytes) => {
      heard += bytes;
      const found = wanted.exec(heard);
      if (found) resolve(found);
    });
    program.once('error', reject);
    program.once('exit', (code) => reject(new Error(`ended with ${code}: ${heard}${complained}`)));
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
