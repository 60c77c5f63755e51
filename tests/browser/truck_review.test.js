// The review in the truck, 1280 wide, by keyboard alone: what nothing checks, a number read off a
// photo, a slope booked at the wrong face, and the packet.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { focusSeen } from './focus.js';
import { picture, screen, WIDE } from './screen.js';
import { type, typeThing } from './typing.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const PIPES = 10;
/** Keys that one thing may take. */
const MOST_KEYS = 4;

// A rectangle whose legs agree, ten pipes read once, an eleventh read off its photo, and a slope that
// somebody booked at face 2, which is a gable.
async function house(ask, url) {
  const { job } = await ask({ ask: 'start_job', address: '12 Pretend Lane' });
  for (const [k, length] of ['40 ft', '24 ft', '40 ft', '24 ft'].entries()) {
    await type(ask, job, k + 1, length);
    if (k < 3) await ask({ ask: 'corner', job, after_leg: k + 1, turn: { turn: 'outside' } });
  }
  for (let pipe = 1; pipe <= PIPES + 1; pipe += 1) {
    await ask({ ask: 'add_item', job, leg: 1, item: 'pipe', after: pipe - 1 });
    const size = { thing: 'size', item: 'pipe', number: pipe, size: 'across' };
    await typeThing(ask, job, size, '0 ft 3', pipe > PIPES ? 'off_photo' : 'taped');
  }
  const photo = readFileSync(new URL('../../assets/demo/pipe-3in.jpg', import.meta.url));
  await fetch(`${url}/photo?job=${job}&from=camera&of=pipe+${PIPES + 1}`, {
    method: 'POST',
    body: photo,
  });
  const read = { by: 'level_and_tape', run_in: 12, rise_in: 6 };
  await ask({ ask: 'pitch', job, leg: 2, read });
  return job;
}

test('ten unproved things, one read off a photo and one wrong face are settled by at most four keys each, and the packet is made', async (t) => {
  const { url, ask } = await open(t, newBook(t));
  const job = await house(ask, url);
  const { page, wrong } = await screen(WIDE);
  await page.goto(`${url}/#${job}/4`);
  const rows = page.locator('main li[data-thing]');
  await page.locator('main li[data-thing="face 2"]').waitFor();
  const row = (thing) => page.locator(`main li[data-thing="${thing}"]`);
  const focused = () =>
    page.evaluate(() => document.activeElement?.closest('[data-thing]')?.dataset.thing ?? null);
  const seen = async () => assert.equal(await page.locator(':focus').evaluate(focusSeen), '');
  const photo = page.getByRole('region', { name: 'Photo', exact: true });

  // Every edge of the plan is in its list with a name, a value and a state.
  const edges = await page
    .getByRole('list', { name: 'Edges' })
    .locator('> li')
    .evaluateAll((all) =>
      all.map(({ innerText, dataset }) => [innerText.trim(), dataset.value, dataset.state]),
    );
  assert.ok(edges.length >= 4, `${edges.length} edges`);
  for (const edge of edges) for (const told of edge) assert.ok(told, JSON.stringify(edge));

  const left = () =>
    rows.evaluateAll((all) =>
      all
        .filter((one) => /^(read once|off photo)$/.test(one.dataset.state))
        .map((one) => one.dataset.thing),
    );
  const unproved = await left();
  assert.equal(unproved.filter((thing) => /^pipe/.test(thing)).length, PIPES + 1);
  assert.ok(unproved.includes('face 2'), `${unproved}`);

  const spent = [];
  let at = null;
  const press = async (key) => {
    await page.keyboard.press(key);
    spent.at(-1).keys += 1;
  };
  while ((await left()).length > 0) {
    spent.push({ thing: null, keys: 0 });
    const before = at;
    await press('n');
    await page.waitForFunction((was) => {
      const now = document.activeElement?.closest('[data-thing]')?.dataset.thing;
      return now && now !== was;
    }, before);
    at = await focused();
    spent.at(-1).thing = at;
    await seen();
    if (at === 'face 2') {
      await press('s');
      await row(at).and(page.locator(':not([data-state="read once"])')).waitFor();
    } else {
      if ((await row(at).getAttribute('data-state')) === 'off photo') {
        // The photo stands beside the number, and has the screen by one key.
        await photo.getByRole('img').waitFor();
        await press('z');
        await page.waitForFunction(
          () => document.querySelector('section[aria-label="Photo"]').clientWidth >= 1200,
        );
        await press('b');
      }
      await press('a');
      await row(at).and(page.locator('[data-state="settled at desk"]')).waitFor();
      await seen();
    }
    assert.ok(spent.at(-1).keys <= MOST_KEYS, `${at}: ${spent.at(-1).keys} keys`);
    assert.ok(spent.length <= unproved.length, 'each is visited once');
  }
  await picture(page, 'truck-review');

  await page.evaluate(axe);
  const { violations } = await page.evaluate(() => window.axe.run());
  const grave = violations.filter(({ impact }) => ['serious', 'critical'].includes(impact));
  assert.deepEqual(
    grave.map(({ id, nodes }) => [id, nodes[0].html]),
    [],
  );

  let keys = 0;
  for (const name of ['Job file', 'Make packet']) {
    const button = page.getByRole('button', { name, exact: true });
    await button.waitFor();
    while (!(await button.evaluate((control) => control === document.activeElement))) {
      // Back from where the focus is: the places stand before the leaf.
      await page.keyboard.press(name === 'Job file' ? 'Shift+Tab' : 'Tab');
      keys += 1;
      assert.ok(keys < 200, `${name} is never reached`);
    }
    await seen();
    await page.keyboard.press('Enter');
    keys += 1;
  }
  await page
    .getByRole('list', { name: 'Packets' })
    .getByRole('listitem')
    .first()
    .waitFor({ timeout: 180_000 });
  assert.deepEqual(wrong, []);
  const most = Math.max(...spent.map((one) => one.keys));
  const all = spent.reduce((sum, one) => sum + one.keys, 0);
  t.diagnostic(
    `truck review | 1280 x 800 | ${spent.length} things with ${all} keys, at most ${most} each (at most ${MOST_KEYS}), ${keys} keys to the packet, ${edges.length} edges with name, value and state, 0 serious faults, 0 clicks`,
  );
});
