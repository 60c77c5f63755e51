// A rectangle in feet and inches, in the real window at a phone's size.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { button, PHONE, region, windowOf } from './hand.mjs';

test('a rectangle is booked in at most seven taps a leg and thirty in all, and closes', async (t) => {
  const hand = await windowOf(t, PHONE);
  await hand.start('12 Pretend Lane');
  hand.taps = 0;
  await hand.tap(button('Read'));
  const legs = ['42 ft 7', '24 ft 6', '42 ft 7', '24 ft 6'];
  for (const [i, length] of legs.entries()) {
    const before = hand.taps;
    await hand.book(length);
    const back = region('Read-back');
    assert.equal(await hand.page.attribute(back, 'data-value'), `${length} in`);
    assert.ok((await hand.page.text(back)).replace(/\s+/g, ' ').includes(`${length} in`));
    if (i === 1) await hand.picture('read-back');
    await hand.tap(back + button('Right'));
    if (i + 1 < legs.length) await hand.tap(button('Outside corner'));
    assert.ok(hand.taps - before <= 7, `leg ${i + 1}: ${hand.taps - before} taps`);
  }
  const closure = region('Closure');
  await hand.page.sees(`${closure}[@data-state="closes"]`);
  assert.match(await hand.page.text(closure), /Closes/);
  assert.ok(hand.taps <= 30, `${hand.taps} taps`);
  for (const [i, length] of legs.entries()) {
    const row = `//*[@aria-label="Readings"]//li[@data-thing="leg ${i + 1}"]`;
    assert.equal(await hand.page.attribute(row, 'data-value'), `${length} in`);
  }
  await hand.picture('closes');
  t.diagnostic(`${hand.taps} taps, 4 of 4 read-backs equal, closes`);
});
