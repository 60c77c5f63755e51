import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { picture, screen } from './screen.js';
import { tHouse } from './walks.js';

const HOUSE = { stem: 20, left: 18, bar: 24, right: 18, width: 24 };

test('a T-house with 42 typed for 24 is told in words, and mended by reading again', async (t) => {
  const { url } = await open(t, newBook(t));
  const { page, hand, wrong } = await screen();
  await page.goto(url);
  await hand.start('12 Pretend Lane');
  const legs = tHouse(HOUSE);
  legs[2] = { ...legs[2], length: '42 ft' };
  await hand.walk(legs);

  const closure = page.getByRole('region', { name: 'Closure' });
  await closure.and(page.locator('[data-state=gap]')).waitFor();
  assert.match(await closure.innerText(), /18 ft/);
  const suspects = closure.getByRole('button', { name: /^Leg \d+$/ });
  const named = await suspects.allInnerTexts();
  assert.ok(named.length <= 2 && named.includes('Leg 3'), named.join());
  await picture(page, 'gap');

  hand.taps = 0;
  await hand.tap(closure.getByRole('button', { name: 'Leg 3', exact: true }));
  const leaf = page.getByRole('region', { name: 'Leg 3', exact: true });
  await picture(page, 'leg-of-a-gap');
  await hand.tap(leaf.getByRole('button', { name: 'Read again', exact: true }));
  const pad = page.getByRole('group', { name: 'Keypad' });
  await pad.waitFor();
  const toReadAgain = hand.taps;
  assert.ok(toReadAgain <= 3, `${toReadAgain} taps`);
  assert.doesNotMatch(await page.content(), /\b42\b/);
  await hand.book('24 ft');

  // Both readings stand; the wrong one is struck by hand.
  await hand.tap(page.locator('li[data-thing="leg 3"] button').first());
  await hand.tap(leaf.getByRole('button', { name: 'Story', exact: true }));
  const story = leaf.getByRole('region', { name: 'Story' });
  await hand.tap(story.locator('li[data-value="42 ft"]').getByRole('button', { name: 'Strike' }));
  await story.locator('li[data-value="42 ft"][data-state="struck"]').waitFor();
  assert.match(await story.innerText(), /42/);
  await closure.and(page.locator('[data-state=closes]')).waitFor();
  await picture(page, 'struck-in-the-story');
  assert.deepEqual(wrong, []);
  t.diagnostic(
    `gap 18 ft said, suspects ${named.join(' and ')}, ${toReadAgain} taps to read again`,
  );
});
