import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { picture, screen } from './screen.js';
import { rectangle } from './walks.js';

test('a rectangle in feet and inches is booked in at most thirty taps and no scroll', async (t) => {
  const { url } = await open(t, newBook(t));
  const { page, hand, hosts, wrong } = await screen();
  await page.goto(url);
  await hand.start('12 Pretend Lane');
  await picture(page, 'field-book-empty');

  hand.taps = 0;
  hand.scrolls = 0;
  await hand.tap('Read');
  await picture(page, 'keypad');
  const legs = rectangle('42 ft 7', '24 ft 6');
  for (const [i, { length, corner }] of legs.entries()) {
    await hand.book(length);
    const back = page.getByRole('region', { name: 'Read-back' });
    const value = `${length} in`;
    await back.and(page.locator(`[data-value="${value}"]`)).waitFor();
    assert.match((await back.innerText()).replace(/\s+/g, ' '), new RegExp(value));
    const spoken = await page.evaluate(() => window.spoken.at(-1));
    assert.equal(
      spoken,
      { 0: 'four two feet, seven inches', 1: 'two four feet, six inches' }[i % 2],
    );
    if (i === 1) await picture(page, 'read-back');
    await hand.tap(back.getByRole('button', { name: 'Right', exact: true }));
    if (i < 3) await hand.tap(corner);
  }
  const closure = page.getByRole('region', { name: 'Closure' });
  await closure.and(page.locator('[data-state=closes]')).waitFor();
  assert.match(await closure.innerText(), /Closes/);
  assert.ok(hand.taps <= 30, `${hand.taps} taps`);
  assert.equal(hand.scrolls, 0);
  const values = await page
    .getByRole('list', { name: 'Readings' })
    .locator('li[data-thing]')
    .evaluateAll((items) => items.map((item) => [item.dataset.thing, item.dataset.value]).sort());
  assert.deepEqual(values, [
    ['leg 1', '42 ft 7 in'],
    ['leg 2', '24 ft 6 in'],
    ['leg 3', '42 ft 7 in'],
    ['leg 4', '24 ft 6 in'],
  ]);
  assert.deepEqual([...hosts], ['127.0.0.1']);
  assert.deepEqual(wrong, []);
  await picture(page, 'closes');
  t.diagnostic(
    `taps ${hand.taps}, scrolls ${hand.scrolls}, 4 of 4 read-backs equal in text and speech`,
  );
});
