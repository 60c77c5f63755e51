// The hub's square, as it stands in a terminal, on a photo that the window reads: only Join joins.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { crc32, deflateSync } from 'node:zlib';
import { newBook } from '../browser/book.js';
import { button, PHONE, windowOf } from './hand.mjs';

/** Pixels of a module. */
const LARGE = 6;

/** What a laptop prints as it shares its book: the link, and the square of it in half blocks. */
function shared(t) {
  const words = ['open', '--port', '0', '--book', newBook(t), '--hub', '--hub-listen', '127.0.0.1:0'];
  const program = spawn(process.env.EAVEBOOK, words);
  t.after(() => program.kill('SIGKILL'));
  return new Promise((told, fell) => {
    let heard = '';
    program.once('exit', () => fell(new Error(`it ended: ${heard}`)));
    program.stdout.on('data', (bytes) => {
      heard += bytes;
      const link = /by this link\n(\S+)\n/.exec(heard);
      const square = /\n((?:[█▀▄ ]{20,}\n)+)/.exec(heard);
      if (link && square) told({ link: link[1], square: square[1].trimEnd().split('\n') });
    });
  });
}

/** A gray PNG (ISO/IEC 15948) of half blocks: what is drawn is light, as on a dark terminal. */
function photoOf(rows) {
  const light = rows.flatMap((row) => ['█▀', '█▄'].map((half) => [...row].map((sign) => half.includes(sign))));
  const side = Math.max(...light.map((row) => row.length));
  const wide = side * LARGE;
  const lines = light.flatMap((row) => {
    const pixels = Array.from({ length: wide }, (_, x) => (row[Math.floor(x / LARGE)] ? 230 : 30));
    return Array.from({ length: LARGE }, () => Buffer.from([0, ...pixels]));
  });
  const part = (name, bytes) => {
    const named = Buffer.concat([Buffer.from(name), bytes]);
    const framed = Buffer.alloc(named.length + 8);
    framed.writeUInt32BE(bytes.length, 0);
    named.copy(framed, 4);
    framed.writeUInt32BE(crc32(named), named.length + 4);
    return framed;
  };
  const head = Buffer.from([0, 0, 0, 0, 0, 0, 0, 0, 8, 0, 0, 0, 0]);
  head.writeUInt32BE(wide, 0);
  head.writeUInt32BE(lines.length, 4);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const packed = deflateSync(Buffer.concat(lines));
  return Buffer.concat([signature, part('IHDR', head), part('IDAT', packed), part('IEND', Buffer.alloc(0))]);
}

test('the square of a hub is read off a photo in the window, and only Join joins', async (t) => {
  const { link, square } = await shared(t);
  const folder = mkdtempSync(join(tmpdir(), 'eavebook-photo-'));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  const [photo, blank] = ['square.png', 'blank.png'].map((name) => join(folder, name));
  writeFileSync(photo, photoOf(square));
  writeFileSync(blank, photoOf(square.map((row) => ' '.repeat(row.length))));

  const one = await windowOf(t, PHONE);
  await one.start('16 Pretend Lane');
  await one.go('Settings');
  const take = '//input[@type="file"][@aria-label="Take a photo of the code"]';
  const field = '//label[contains(., "Link of a hub")]//input';
  const inField = () => one.page.run('arguments[1](document.evaluate(arguments[0], document, null, 9).singleNodeValue.value)', field);
  await one.page.type(take, blank);
  await one.page.sees('//*[starts-with(normalize-space(), "No square is found on this photo.")]');
  assert.equal(await inField(), '');
  await one.page.type(take, photo);
  await one.page.sees('//*[normalize-space()="The link is in the field. Check it, then tap Join."]');
  assert.equal(await inField(), link);
  await one.picture('square-read');
  await one.tap(button('Join'));
  await one.page.sees('//*[starts-with(normalize-space(), "Joined to the hub of ")]');
});
