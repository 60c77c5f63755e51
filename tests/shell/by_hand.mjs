// Two windows on machines without a network: what one saved, the other brings in, and once however
// often it is carried.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { button, DESK, PHONE, region, windowOf } from './hand.mjs';

const BY_HAND = '//h4[normalize-space()="Copies by file"]/following-sibling::p[@role="status"]';
const BRING = '//input[@type="file"][@aria-label="Add file"]';

/** A person's folder that names where what is saved goes. */
function home(t) {
  const folder = mkdtempSync(join(tmpdir(), 'eavebook-home-'));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  mkdirSync(join(folder, '.config'));
  mkdirSync(join(folder, 'Saved'));
  writeFileSync(join(folder, '.config/user-dirs.dirs'), 'XDG_DOWNLOAD_DIR="$HOME/Saved"\n');
  return folder;
}

test('a copy of the book that is saved in one window is brought in by another', async (t) => {
  const folder = home(t);
  const one = await windowOf(t, PHONE, folder);
  await one.start('14 Pretend Lane');
  await one.tap(button('Read'));
  await one.book('42 ft 7');
  await one.go('Settings');
  await one.tap(button('Save a copy of all jobs'));
  await one.page.sees(`${BY_HAND}[contains(., "Saved")]`);
  await one.picture('copy-saved');
  const saved = readdirSync(join(folder, 'Saved'));
  assert.equal(saved.length, 1, String(saved));

  const two = await windowOf(t, DESK, folder);
  await two.go('Settings');
  for (const said of ['Brought in', 'Nothing new']) {
    await two.page.type(BRING, join(folder, 'Saved', saved[0]));
    await two.page.sees(`${BY_HAND}[contains(., "${said}")]`);
  }
  await two.picture('brought-in');
  await two.tap(button('Close'));
  await two.tap('//button[contains(., "14 Pretend Lane")]');
  await two.go('Field book');
  await two.page.sees('//li[@data-thing="leg 1"][@data-value="42 ft 7 in"]');
});
