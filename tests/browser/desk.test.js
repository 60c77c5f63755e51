// The review at the desk: 1280 wide, by keyboard alone.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { addPretendHouse, newBook, open } from './book.js';
import { drawn, PHONE, picture, screen, WIDE } from './screen.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

// The pretend house at the plan; every key is counted, and nothing is clicked once it is open.
async function atDesk(t, size = WIDE) {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { url } = await open(t, folder);
  const seen = await screen(size);
  const { page, hand } = seen;
  await page.goto(url);
  await hand.openFirstStop();
  const nav = page.getByRole('navigation', { name: 'Places' });
  const fold = nav.locator('button[aria-expanded]');
  if (await fold.isVisible()) await hand.tap(fold);
  await hand.tap(nav.getByRole('button', { name: 'Plan', exact: true }));
  await page.locator('main[data-place="Plan"] svg').first().waitFor();
  return seen;
}

const once = (page) =>
  page
    .locator('main li[data-thing][data-state]')
    .evaluateAll((rows) =>
      rows
        .filter((row) => /read once|off photo/.test(row.dataset.state))
        .map((row) => row.dataset.thing),
    );

const focused = (page) =>
  page.evaluate(() => document.activeElement?.closest('[data-thing]')?.dataset.thing ?? null);

const stateOf = (page, thing) =>
  page.locator(`main li[data-thing="${thing}"]`).getAttribute('data-state');

const says = (page, words) => page.getByText(words, { exact: false }).first().waitFor();

test('each thing that nothing checks is visited once and accepted by two keys', async (t) => {
  const { page, wrong } = await atDesk(t);
  for (const name of ['List', 'Plan', 'Photo']) {
    await page.getByRole('region', { name, exact: true }).waitFor();
  }
  const all = await once(page);
  assert.ok(all.length >= 3, `${all.length} things are read once`);
  let keys = 0;
  const visited = [];
  while ((await once(page)).length > 0 && visited.length < 60) {
    await page.keyboard.press('n');
    keys += 1;
    await page.waitForFunction((before) => {
      const at = document.activeElement?.closest('[data-thing]')?.dataset.thing;
      return at && !before.includes(at);
    }, visited);
    const at = await focused(page);
    visited.push(at);
    await page.keyboard.press('a');
    keys += 1;
    await page.locator(`main li[data-thing="${at}"][data-state="settled at desk"]`).waitFor();
  }
  assert.equal(new Set(visited).size, visited.length);
  await page.keyboard.press('n');
  await says(page, 'Nothing is left that is read once');
  t.diagnostic(`${visited.length} things settled with ${keys} keys, 0 clicks`);
  await picture(page, 'desk');
  assert.deepEqual(wrong, []);
});

test('what was accepted can be taken back, and a struck reading stays in its story', async (t) => {
  const { page, hand } = await atDesk(t);
  await page.keyboard.press('n');
  await page.waitForFunction(() => document.activeElement?.closest('[data-thing]'));
  const at = await focused(page);
  const before = await stateOf(page, at);
  await page.keyboard.press('a');
  await page.locator(`main li[data-thing="${at}"][data-state="settled at desk"]`).waitFor();
  await hand.tap(page.getByRole('button', { name: /^Undo/ }));
  await page.locator(`main li[data-thing="${at}"][data-state="${before}"]`).waitFor();
  await page.keyboard.press('s');
  await says(page, 'struck');
});

test('z gives the photo of what is chosen the screen, b gives it back', async (t) => {
  const { page, hand } = await atDesk(t);
  await hand.tap(page.locator('main li[data-thing="pipe 1"] button[aria-expanded]'));
  const photo = page.getByRole('region', { name: 'Photo', exact: true });
  await photo.getByRole('img').waitFor();
  const small = await photo.boundingBox();
  await page.keyboard.press('z');
  await page.waitForFunction(
    () => document.querySelector('section[aria-label="Photo"]').clientWidth >= 1200,
  );
  await page.keyboard.press('b');
  await page.waitForFunction(
    (width) => document.querySelector('section[aria-label="Photo"]').clientWidth <= width,
    Math.ceil(small.width),
  );
  await page.keyboard.press('b');
  assert.equal(await page.locator('main [aria-expanded="true"] ~ section').count(), 0);
});

test('single letters do nothing where they are switched off, in a text, or on a phone', async (t) => {
  const { page, hand } = await atDesk(t);
  const chosen = () => page.locator('main section[data-panel]').count();
  await hand.tap(page.getByRole('button', { name: 'Settings', exact: true }));
  const keys = page.getByRole('switch', { name: 'Single-letter keys' });
  await hand.tap(keys);
  await keys.and(page.locator('[aria-checked="false"]')).waitFor();
  await hand.tap(page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }));
  await page.keyboard.press('n');
  await drawn(page);
  assert.equal(await chosen(), 0);
  const phone = await atDesk(t, PHONE);
  await phone.page.keyboard.press('n');
  await drawn(phone.page);
  assert.equal(await phone.page.locator('main section[data-panel]').count(), 0);
});

test('the desk has no serious fault of access', async (t) => {
  const { page } = await atDesk(t);
  await page.keyboard.press('n');
  await page.waitForFunction(() => document.activeElement?.closest('[data-thing]'));
  await page.evaluate(axe);
  const found = await page.evaluate(() => window.axe.run());
  const serious = found.violations.filter((one) => ['serious', 'critical'].includes(one.impact));
  assert.deepEqual(
    serious.map((one) => `${one.id}: ${one.nodes[0].html}`),
    [],
  );
});
