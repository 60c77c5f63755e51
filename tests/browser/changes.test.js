import assert from 'node:assert/strict';
import { test } from 'node:test';
import { addPretendHouse, newBook, open } from './book.js';
import { NARROW, PHONE, picture, screen } from './screen.js';

/** The pretend house, opened from Today at Job file, taps counted from there on Today. */
async function jobFile(t, size) {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const served = await open(t, folder);
  const seen = await screen(size);
  const { page, hand } = seen;
  await page.goto(served.url);
  await page.getByRole('list', { name: 'Stops' }).waitFor();
  hand.taps = 0;
  await hand.openFirstStop();
  const nav = page.getByRole('navigation', { name: 'Places' });
  await hand.unfold();
  await hand.tap(nav.getByRole('button', { name: 'Job file', exact: true }));
  return { ...seen, ...served };
}

test('three bad sheets with face, photo and consent in at most 14 taps and no typing', async (t) => {
  const { page, hand, wrong } = await jobFile(t, PHONE);
  await hand.tap('Add change');
  const change = page.getByRole('group', { name: 'Change', exact: true });
  const button = (name) => change.getByRole('button', { name, exact: true });
  await hand.tap(change.getByRole('button').first());
  for (let sheet = 0; sheet < 3; sheet += 1) await hand.tap(button('one more'));
  await hand.tap(button('Photo'));
  await hand.tap('Shutter');
  await hand.tap('Done');
  assert.equal(await change.locator('output').innerText(), '3', 'the camera changes nothing');
  await hand.tap(change.getByRole('checkbox', { name: 'Consent' }));
  await picture(page, 'change-in-hand');
  await hand.tap(button('Book it'));

  const row = page.getByRole('list', { name: 'Changes' }).locator('[data-thing="change 1"]');
  // The photo is kept beside what the hand does meanwhile.
  await page.locator('[data-thing="change 1"][data-state="proved"]').waitFor();
  assert.equal(await row.getAttribute('data-value'), '3 deck sheets');
  assert.ok(hand.taps <= 14, `${hand.taps} taps`);
  assert.equal(await change.count(), 0);
  await hand.tap(row.getByRole('button').first());
  const leaf = page.getByRole('region', { name: 'Change 1', exact: true });
  assert.match(await leaf.innerText(), /3 deck sheets under .*\$58\.00 a sheet laid, agreed, 1 photo/);
  await picture(page, 'change-booked');
  assert.deepEqual(wrong, []);
  t.diagnostic(`${hand.taps - 1} taps from Today`);
});

test('what a change lacks is asked for in words and nothing is booked', async (t) => {
  const { page, hand } = await jobFile(t, NARROW);
  await hand.tap('Add change');
  const change = page.getByRole('group', { name: 'Change', exact: true });
  const bookIt = change.getByRole('button', { name: 'Book it', exact: true });
  await hand.tap(bookIt);
  await page.getByText('Under which face?', { exact: false }).last().waitFor();
  await hand.tap(change.getByRole('button').first());
  await hand.tap(bookIt);
  await page.getByText('0 is no count of sheets.', { exact: false }).waitFor();
  assert.equal(await page.locator('[data-thing="change 1"]').count(), 0);
  const small = await change.evaluate((group) =>
    [...group.querySelectorAll('button, label')]
      .map((control) => ({ name: control.innerText, box: control.getBoundingClientRect().toJSON() }))
      .filter(({ box }) => box.width < 71.5 || box.height < 71.5 || box.right > innerWidth + 0.5),
  );
  assert.deepEqual(small, []);
});
