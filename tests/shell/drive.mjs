// The real window, under a virtual display: a reading booked by its buttons, a photo kept and read
// back, nothing else of the machine in reach, and all of it still there after the window was closed.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { openWindow, startDriver } from './webdriver.mjs';

const target = process.env.CARGO_TARGET_DIR ?? fileURLToPath(new URL('../../target', import.meta.url));
const shell = process.env.EAVEBOOK_SHELL ?? join(target, 'debug/eavebook-shell');
const out = fileURLToPath(new URL('../out/', import.meta.url));
const book = mkdtempSync(join(tmpdir(), 'eavebook-shell-'));
const button = (name) => `//button[normalize-space()="${name}"]`;
const key = (name) => `//*[@role="group"][@aria-label="Keypad"]${button(name)}`;
const READ_BACK = '//section[@aria-label="Read-back"]';

let driver;
let page;

before(async () => {
  driver = await startDriver({ EAVEBOOK_BOOK: book });
  page = await openWindow(driver, shell);
});

after(async () => {
  await page?.close();
  driver?.stop();
  rmSync(book, { recursive: true, force: true });
});

test('a reading is booked by the keys and read back', async () => {
  await page.click(button('Start a job'));
  await page.type('//input[@type="text"]', '9 Invented Row');
  await page.click(button('Start'));
  await page.text('//main[@data-place="Field book"]');
  await page.click(button('Read'));
  for (const name of ['4', '2', 'ft', '7']) await page.click(key(name));
  await page.click(key('Book it'));
  assert.equal(await page.attribute(READ_BACK, 'data-value'), '42 ft 7 in');
  mkdirSync(out, { recursive: true });
  writeFileSync(join(out, 'shell.png'), await page.screenshot());
});

test('a photo goes in as bytes and comes back the same', async () => {
  const told = await page.run(`
    const done = arguments[arguments.length - 1];
    const invoke = window.__TAURI_INTERNALS__.invoke;
    (async () => {
      const { stops } = await invoke('command', { request: { ask: 'today' } });
      const canvas = document.createElement('canvas');
      const blob = await new Promise((made) => canvas.toBlob(made, 'image/png'));
      const bytes = new Uint8Array(await blob.arrayBuffer());
      const about = new URLSearchParams({ job: stops[0].job, from: 'file', of: 'leg 1' });
      const reply = await invoke('photo', bytes, { headers: { 'eavebook-about': String(about) } });
      const sha256 = [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))]
        .map((byte) => byte.toString(16).padStart(2, '0')).join('');
      const back = new Uint8Array(await invoke('kept_photo', { sha256 }));
      return { reply: reply.reply, sent: bytes.length, same: String(back) === String(bytes) };
    })().then(done, (why) => done(String(why)));`);
  assert.equal(told.reply, 'job', JSON.stringify(told));
  assert.ok(told.sent > 0);
  assert.equal(told.same, true);
});

test('the page can reach nothing of the machine but the field book', async () => {
  for (const name of ['plugin:app|version', 'plugin:window|close', 'plugin:path|resolve_directory']) {
    const told = await page.run(
      `const done = arguments[arguments.length - 1];
       window.__TAURI_INTERNALS__.invoke(arguments[0], {}).then(() => done('allowed'), (why) => done('refused: ' + why));`,
      name,
    );
    assert.match(told, /^refused: .*not allowed/, name);
  }
});

test('the page can reach no other host', async () => {
  const told = await page.run(`
    const done = arguments[arguments.length - 1];
    document.addEventListener('securitypolicyviolation', (event) => done(event.effectiveDirective), { once: true });
    fetch('http://127.0.0.1:9/').catch(() => {});`);
  assert.equal(told, 'connect-src');
});

test('the window opens again where the work broke off, with what was booked', async () => {
  await page.close();
  page = await openWindow(driver, shell);
  assert.equal(await page.attribute('//*[@data-thing="leg 1"]', 'data-value'), '42 ft 7 in');
});
