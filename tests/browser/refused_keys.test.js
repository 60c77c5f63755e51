import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { picture, screen } from './screen.js';

async function onThePad(t, sized) {
  const served = await open(t, newBook(t));
  const seen = await screen(sized);
  await seen.page.goto(served.url);
  await seen.hand.start('12 Pretend Lane');
  await seen.hand.tap('Read');
  const pad = seen.page.getByRole('group', { name: 'Keypad' });
  await pad.waitFor();
  const key = (name) => pad.getByRole('button', { name, exact: true });
  const slots = () =>
    pad
      .locator('[data-slot]')
      .evaluateAll((all) =>
        all.map((slot) => slot.querySelector('.typed').textContent + (slot.ariaCurrent ? '*' : '')),
      );
  // A key that is taken, drawn before the next one comes.
  const press = async (name) => {
    const before = JSON.stringify(await slots());
    await seen.hand.tap(key(name));
    for (let tries = 0; tries < 6000; tries += 1) {
      if (JSON.stringify(await slots()) !== before) return;
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    assert.fail(`${name} changed nothing: ${before}`);
  };
  return { ...served, ...seen, pad, key, press, slots };
}

const BACK = 'Take back one';

const refusals = [
  { name: 'fourteen inches', keys: ['9', 'ft', '1', '4'] },
  { name: 'feet twice', keys: ['9', 'ft', 'ft'] },
  { name: 'no length at all', keys: ['0', 'ft', 'Book it'] },
  { name: 'four hundred feet', keys: ['4', '0', '0'] },
  { name: 'a figure without its unit', keys: ['4', '2', 'Book it'] },
  { name: 'nothing to take back', keys: [BACK] },
];

for (const { name, keys } of refusals) {
  test(`${name} is refused in words and changes nothing`, async (t) => {
    const { page, hand, key, press, slots, wrong } = await onThePad(t);
    for (const before of keys.slice(0, -1)) await press(before);
    const stood = await slots();
    await hand.tap(key(keys.at(-1)));
    const status = page.getByRole('status').filter({ hasText: /\w/ });
    await page.waitForFunction(() =>
      [...document.querySelectorAll('.news [role=status]')].some((told) => told.textContent.trim()),
    );
    const said = (await status.allInnerTexts()).find((text) => !/copy/.test(text)).trim();
    assert.match(said, /^[\w"].*[.?]$/s);
    assert.deepEqual(await slots(), stood);
    assert.equal(await page.getByRole('region', { name: 'Read-back' }).count(), 0);
    assert.deepEqual(wrong, []);
    if (name === 'fourteen inches') await picture(page, 'refused');
    t.diagnostic(`${name}: ${said}`);
  });
}

test('ten keys within a second are all kept, in order', async (t) => {
  const { page, key, slots, ask } = await onThePad(t);
  const { stops } = await ask({ ask: 'today' });
  const { job } = stops[0];
  const before = (await ask({ ask: 'job', job })).pad.open.press;
  const keys = ['4', '2', BACK, '3', 'ft', '9', BACK, '1', BACK, '8'];
  const places = [];
  for (const name of keys) places.push(await key(name).boundingBox());
  const began = Date.now();
  for (const { x, y, width, height } of places) {
    await page.touchscreen.tap(x + width / 2, y + height / 2);
  }
  const took = Date.now() - began;
  await page.waitForFunction(
    () => document.querySelector('[data-slot=in] .typed')?.textContent === '8',
  );
  const pad = (await ask({ ask: 'job', job })).pad.open;
  assert.equal(pad.press - before, keys.length);
  assert.deepEqual(await slots(), ['43', '8*', '']);
  t.diagnostic(`10 of 10 kept in order; sent within ${took} ms`);
});

test('the same digit in a moment is kept and asked about, and the question is in no way', async (t) => {
  const { page, hand, key, press, slots } = await onThePad(t);
  const { x, y, width, height } = await key('2').boundingBox();
  // Both taps within one task of the page: a bounce, however busy the machine is.
  await page.evaluate(
    ([left, top]) => {
      const two = document.elementFromPoint(left, top);
      two.click();
      two.click();
    },
    [x + width / 2, y + height / 2],
  );
  const question = page.getByRole('group', { name: /two 2s\?/i });
  await question.waitFor();
  await picture(page, 'two-twos');
  assert.deepEqual(await slots(), ['22*', '', '']);
  await hand.tap(question.getByRole('button', { name: 'One', exact: true }));
  await question.waitFor({ state: 'detached' });
  assert.deepEqual(await slots(), ['2*', '', '']);
  await press('ft');
  assert.deepEqual(await slots(), ['2', '*', '']);
});
