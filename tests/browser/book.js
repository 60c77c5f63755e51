// The real program over a book of its own, started, asked and killed.
import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, readlinkSync, rmSync } from 'node:fs';
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
 * A hub on a free port, which it keeps. Gives `link(author)`, `typed(author)` for who will book on the
 * device that joins by it, `kill()` and `start()` after a kill.
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
  const codes = async (author) => {
    const who = author ? ['--author', author] : [];
    const names = ['--company', 'Pretend Roofs', ...who];
    const asks = spawn(PROGRAM, ['hub', 'code', ...names, '--dir', folder]);
    const [, typed, link] = await said(asks, /^(\S+)\n(\S+)\n/);
    return { typed, link };
  };
  return {
    start,
    kill,
    link: async (author) => (await codes(author)).link,
    typed: async (author) => {
      const { typed, link } = await codes(author);
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
  return { url, kill, ended, pid: program.pid, ask: (request) => ask(url, request) };
}

/** Addresses of other machines that a program is connected to: in hex, as the system lists them. */
export function farEnds(pid) {
  const sockets = new Set(
    readdirSync(`/proc/${pid}/fd`).flatMap((fd) => {
      try {
        return /^socket:\[(\d+)\]$/.exec(readlinkSync(`/proc/${pid}/fd/${fd}`))?.[1] ?? [];
      } catch {
        return [];
      }
    }),
  );
  const rows = ['tcp', 'tcp6', 'udp', 'udp6'].flatMap((kind) =>
    readFileSync(`/proc/${pid}/net/${kind}`, 'utf8').split('\n').slice(1),
  );
  const ends = rows.map((row) => row.trim().split(/\s+/));
  // Nobody yet, or this machine: 127.0.0.1, as it is and within an address of version 6.
  const near = /^(0+|0100007F|0+FFFF00000100007F|0+01000000):/;
  return ends.filter((end) => sockets.has(end[9]) && !near.test(end[2])).map((end) => end[2]);
}

/** How many entries a book holds, and how many photos: proved by a copy of it, which may be open. */
export function holds(t, folder) {
  const file = join(newBook(t), 'copy.book');
  const told = execFileSync(PROGRAM, ['backup', file, '--book', folder], { encoding: 'utf8' });
  const [, entries, photos] = /holds (\d+) entr\S+, (\d+) photo/.exec(told);
  return { entries: Number(entries), photos: Number(photos) };
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
