// A job without a network, in one real window; a second one joins; both read one leg while the hub
// is dead; it comes back: both readings are on both, each once, and one is struck by a person.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { hub, newBook } from '../browser/book.js';
import { button, DESK, PHONE, region, windowOf } from './hand.mjs';

const ALONE = '1 copy: this phone only';
const TWO = '2 copies: this phone, hub';
const LEG = '//li[@data-thing="leg 1"]';
const STORY = region('Story');
const read = (value) => `${STORY}//li[@data-value="${value}"]`;

async function join(hand, link) {
  await hand.go('Settings');
  const leaf = '//*[@role="dialog" or self::dialog][@aria-label="Settings" or .//h2[contains(., "Settings")]]';
  await hand.page.type('//label[contains(., "Link of a hub")]//input', link);
  await hand.tap(button('Join'));
  await hand.page.sees(`${leaf}//*[starts-with(normalize-space(), "Joined to the hub of ")]`);
  await hand.tap(`${leaf}${button('Close')}`);
}

async function readAgain(hand, length) {
  await hand.tap(`${LEG}//button`);
  await hand.tap(`${region('Leg 1')}${button('Read again')}`);
  await hand.book(length);
}

test('a job booked without a network has copies once there is a hub, and two who read one leg lose nothing', async (t) => {
  const one = await windowOf(t, PHONE);
  await one.start('12 Pretend Lane');
  await one.copies(ALONE);
  await one.tap(button('Read'));
  for (const [i, length] of ['42 ft 7', '24 ft 6', '42 ft 7', '24 ft 6'].entries()) {
    await one.book(length);
    if (i < 3) await one.tap(button('Outside corner'));
  }
  await one.page.sees(`${region('Closure')}[@data-state="closes"]`);
  await one.copies(ALONE);
  await one.picture('this-phone-only');

  const yard = await hub(t, newBook(t));
  await join(one, await yard.link());
  await one.copies(TWO);
  await one.picture('two-copies');

  const two = await windowOf(t, DESK);
  await two.start('A job of its own');
  await join(two, await yard.typed());
  await two.copies(TWO);
  await two.go('Today');
  await two.tap('//button[contains(., "12 Pretend Lane")]');
  await two.page.sees('//main[not(@data-place="Today")]');
  await two.go('Field book');
  await two.page.sees(LEG);

  await yard.kill();
  await readAgain(one, '42 ft 9');
  await readAgain(two, '43 ft 1');
  for (const hand of [one, two]) await hand.copies('Waiting to send: 1');
  await one.picture('waiting');
  await yard.start();
  for (const hand of [one, two]) await hand.copies(TWO);

  for (const hand of [one, two]) {
    await hand.tap(`${LEG}//button`);
    await hand.tap(`${region('Leg 1')}${button('Story')}`);
    for (const value of ['42 ft 7 in', '42 ft 9 in', '43 ft 1 in']) {
      await hand.page.sees(read(value));
      assert.equal(await hand.page.count(read(value)), 1, value);
    }
  }
  await two.picture('both-readings');
  const struck = `${read('43 ft 1 in')}[@data-state="struck"]`;
  await one.tap(`${read('43 ft 1 in')}${button('Strike')}`);
  for (const hand of [one, two]) {
    await hand.page.sees(struck);
    for (const value of ['42 ft 7 in', '42 ft 9 in', '43 ft 1 in'])
      assert.equal(await hand.page.count(read(value)), 1, value);
  }
  await one.picture('one-struck');
});
