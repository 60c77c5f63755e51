import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { draws } from './draws.js';
import { picture, screen } from './screen.js';
import { type } from './typing.js';
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

test('of 500 single swaps of two digits that closure can see, the true leg is named', async (t) => {
  const { ask } = await open(t, newBook(t));
  const draw = draws(500);
  let seen = 0;
  let among = 0;
  let atMostTwo = 0;
  let drawn = 0;
  while (seen < 500) {
    const legs = tHouse(swappable(draw));
    const book = await bookAll(ask, legs, drawn);
    for (const [i, { feet }] of legs.entries()) {
      const swapped = (feet % 10) * 10 + Math.floor(feet / 10);
      if (swapped === feet || seen === 500) continue;
      drawn += 1;
      const closure = await misread(ask, book, { leg: i + 1, feet, swapped });
      if (closure.state !== 'gap') continue;
      seen += 1;
      if (closure.suspects.length <= 2) atMostTwo += 1;
      if (closure.suspects.some(({ thing }) => thing === `leg ${i + 1}`)) among += 1;
    }
  }
  t.diagnostic(
    `${among} of ${seen} true legs among the suspects, at most two named in ${atMostTwo}; ${drawn} swaps drawn`,
  );
  assert.equal(atMostTwo, seen);
  assert.ok(among >= 0.9 * seen, `${among} of ${seen}`);
});

// Feet of two digits that differ and are not 0, so that a swap shows a length of two digits again.
function swappable(draw) {
  const feet = () => 10 * (1 + draw(6)) + 1 + draw(9);
  for (;;) {
    const house = { stem: feet(), left: feet(), bar: feet(), right: feet(), width: feet() };
    if (house.left + house.width + house.right < 100) return house;
  }
}

const TURNS = { 'Outside corner': { turn: 'outside' }, 'Inside corner': { turn: 'inside' } };

async function bookAll(ask, legs, number) {
  const { job } = await ask({ ask: 'start_job', address: `${number} Pretend Lane` });
  const readings = [];
  for (const [i, { length, corner }] of legs.entries()) {
    const told = await type(ask, job, i + 1, length);
    readings.push(told.pad.read_back.reading);
    if (i + 1 < legs.length) {
      await ask({ ask: 'corner', job, after_leg: i + 1, turn: TURNS[corner] });
    }
  }
  return { job, readings };
}

// Puts a swapped reading in the place of a leg's, looks at closure, and books the true one again.
async function misread(ask, { job, readings }, { leg, feet, swapped }) {
  await ask({ ask: 'strike', job, entry: readings[leg - 1], reason: null });
  const told = await type(ask, job, leg, `${swapped} ft`);
  await ask({ ask: 'strike', job, entry: told.pad.read_back.reading, reason: null });
  const mended = await type(ask, job, leg, `${feet} ft`);
  readings[leg - 1] = mended.pad.read_back.reading;
  return told.closure;
}
