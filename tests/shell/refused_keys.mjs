// Keys that make no length, and keys faster than a machine draws, in the real window.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { button, key, PHONE, region, windowOf } from './hand.mjs';

const NEWS = '//*[contains(@class, "news")]//*[@role="status"][normalize-space()]';
const BACK = 'Take back one';

// The last key of each is refused; what stands in the slots before it stands there after.
const REFUSED = [
  { name: 'nothing to take back', keys: [BACK], stands: ['', '', ''], says: /nothing/i },
  { name: 'a figure without its unit', keys: ['4', '2', 'Book it'], stands: ['42', '', ''], says: /ft/ },
  { name: 'four hundred feet', keys: ['4', '0', '0'], stands: ['40', '', ''], says: /\d/ },
  { name: 'feet twice', keys: ['9', 'ft', 'ft'], stands: ['9', '', ''], says: /feet|ft/ },
  { name: 'fourteen inches', keys: ['9', 'ft', '1', '4'], stands: ['9', '1', ''], says: /14|11|inch/ },
  { name: 'no length at all', keys: ['0', 'ft', 'Book it'], stands: ['0', '', ''], says: /\w/ },
];

test('each key that makes no length is refused in words and changes nothing; ten fast ones stand in order', async (t) => {
  const hand = await windowOf(t, PHONE);
  const { page } = hand;
  const until = async (wanted) => {
    for (let look = 0; look < 600; look += 1) {
      if (String(await shown()) === String(wanted)) return;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    assert.deepEqual(await shown(), wanted);
  };
  const shown = () =>
    page.run(`arguments[1]([...document.querySelectorAll('[data-slot] .typed')].map((one) => one.textContent))`, 0);
  await hand.start('12 Pretend Lane');
  await hand.tap(button('Read'));

  for (const { name, keys, stands: wanted, says } of REFUSED) {
    for (const before of keys.slice(0, -1)) await hand.tap(key(before));
    await until(wanted);
    if (keys.length > 1) await page.gone(NEWS);
    await hand.tap(key(keys.at(-1)));
    const said = await page.text(NEWS);
    assert.match(said, says, name);
    assert.match(said, /[.?]$/s, name);
    assert.deepEqual(await shown(), wanted, name);
    assert.equal(await page.count(region('Read-back')), 0, name);
    if (name === 'fourteen inches') await hand.picture('refused');
    t.diagnostic(`${name}: ${said.replace(/\s+/g, ' ')}`);
    // Emptied for the next, and what was said is gone by what is typed.
    for (let left = 0; left < 6 && (await shown()).join('') !== ''; left += 1) await hand.tap(key(BACK));
    await until(['', '', '']);
  }

  // Within one task of the page: no hand is faster.
  const fast = ['4', '2', BACK, '3', 'ft', '9', BACK, '1', BACK, '8'];
  await page.run(
    `for (const name of arguments[0])
       [...document.querySelectorAll('[aria-label="Keypad"] button')]
         .find((one) => (one.ariaLabel ?? one.textContent.trim()) === name).click();
     arguments[1]();`,
    fast,
  );
  await until(['43', '8', '']);
  t.diagnostic('10 of 10 fast keys stand in order');
});
