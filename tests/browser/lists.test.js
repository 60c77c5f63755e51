// What every list, and every control below a wide screen, holds to: the names by which a screen
// reader, a person and a script find a thing do not depend on what was read of it.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { addPretendHouse, newBook, open } from './book.js';
import { NARROW, PHONE, picture, screen, toPlace, WIDE } from './screen.js';
import { type } from './typing.js';

const STATES = [
  'not looked',
  'hearsay',
  'worked out',
  'read once',
  'off photo',
  'agreed',
  'proved',
  "can't get",
  'struck',
  'settled at desk',
  'guess',
  'confirmed',
];

async function pretendHouse(t, size) {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const served = await open(t, folder);
  const seen = await screen(size);
  await seen.page.goto(served.url);
  await seen.page.getByRole('list', { name: 'Stops' }).getByRole('button').first().waitFor();
  return { ...seen, ...served };
}

// Things without a known state, its word or its mark; controls too small for a glove.
const faults = (page) =>
  page.evaluate((states) => {
    const found = [];
    for (const row of document.querySelectorAll('main li[data-thing][data-state]')) {
      const { thing, state } = row.dataset;
      if (!states.includes(state)) found.push(`${thing}: ${state} is no state`);
      if (!row.innerText.includes(state)) found.push(`${thing}: ${state} is not shown`);
      if (!row.querySelector('svg[data-mark]')) found.push(`${thing}: no mark`);
    }
    if (innerWidth >= 1000) return found;
    for (const control of document.querySelectorAll('button, input, select, a[href], audio')) {
      const whole = control.matches('input') ? (control.closest('label') ?? control) : control;
      const { width, height, right } = whole.getBoundingClientRect();
      if (width <= 1 || height <= 1) continue;
      const name = control.ariaLabel || whole.innerText;
      if (width < 71.5 || height < 71.5) found.push(`${name}: ${width} x ${height}`);
      if (right > innerWidth + 0.5) found.push(`${name} runs over the side`);
    }
    const over = document.documentElement.scrollWidth - innerWidth;
    return over > 0 ? [...found, `${over} px to the side`] : found;
  }, STATES);

for (const [name, size] of Object.entries({ phone: PHONE, narrow: NARROW, wide: WIDE })) {
  test(`each thing of each list has a state, its word and its mark, and each control its size, ${name}`, async (t) => {
    const seen = await pretendHouse(t, size);
    const { page, hand, wrong } = seen;
    let looked = 0;
    const none = async (where) => {
      assert.deepEqual(await faults(page), [], where);
      looked += 1;
    };
    await none('Today');
    await hand.openFirstStop();
    for (const place of ['Arrive', 'Walk-round', 'Field book', 'Leave-site check']) {
      await toPlace(seen, place);
      await none(place);
    }
    await toPlace(seen, 'Takeoff');
    await page.getByRole('heading', { name: 'Takeoff' }).waitFor();
    await none('Takeoff');
    await toPlace(seen, 'Job file');
    await page.locator('main fieldset').waitFor();
    await hand.tap('Add change');
    await none('Job file');
    await toPlace(seen, 'Plan');
    if (size.width < 1000) await hand.tap('List');
    for (const thing of ['leg 1', 'face 3', 'pipe 1', 'photo 1']) {
      const row = page.locator(`main li[data-thing="${thing}"]`);
      await hand.tap(row.locator('button[aria-expanded]').first());
      const title = `${thing.charAt(0).toUpperCase()}${thing.slice(1)}`;
      await page.getByRole('region', { name: title, exact: true }).waitFor();
      await none(thing);
    }
    assert.deepEqual(wrong, []);
    t.diagnostic(`${looked} screens, none with a thing or control at fault`);
  });
}

test('a stop is named by its address alone, whatever was read there', async (t) => {
  const { page, hand } = await pretendHouse(t, PHONE);
  const stop = page.getByRole('list', { name: 'Stops' }).getByRole('button');
  await hand.tap(
    stop.and(
      page.getByRole('button', { name: 'The pretend house, 14 Invented Lane', exact: true }),
    ),
  );
  await page.locator('main[data-place="Field book"]').waitFor();
});

test('six months later the size of the pipe is found in words, with its photo and how it was read', async (t) => {
  const { page, hand, hosts } = await pretendHouse(t, PHONE);
  const search = page.getByRole('searchbox', { name: 'Search' });
  hand.taps = 0;
  await hand.tap(search);
  await search.fill('pipe back side');
  const found = page.getByRole('list', { name: 'Found' }).getByRole('button', { name: /pipe/i });
  await hand.tap(found.first());
  const card = page.getByRole('region', { name: 'Pipe 1', exact: true });
  await card.getByRole('img').first().waitFor();
  assert.match(await card.innerText(), /taped/);
  assert.match(
    await page.locator('main li[data-thing="pipe 1"]').getAttribute('data-value'),
    /\d+ in/,
  );
  assert.ok(hand.taps <= 4, `${hand.taps} taps`);
  await picture(page, 'found-pipe');
  assert.deepEqual([...hosts], ['127.0.0.1']);
  t.diagnostic(`${hand.taps} taps from Today to the card with size, photo and how it was read`);
});

test('a photo of what stands on the roof asks for no side, and one is found on the plan with its tag', async (t) => {
  const seen = await pretendHouse(t, PHONE);
  const { page, hand } = seen;
  await hand.openFirstStop();
  await toPlace(seen, 'Walk-round');
  const roof = page.getByRole('region', { name: 'Roof', exact: true });
  await roof.locator('li[data-thing^="photo"][data-state="confirmed"]').first().waitFor();
  assert.equal(await page.getByRole('region', { name: 'Which side?' }).count(), 0);
  assert.match(await page.locator('main').innerText(), /Room for about [\d,]+ photos\./);
  await toPlace(seen, 'Plan');
  await hand.tap('List');
  const row = page.locator('main li[data-thing="photo 1"]');
  await hand.tap(row.locator('button[aria-expanded]').first());
  await row.getByRole('group', { name: 'Tag' }).waitFor();
  await page.getByRole('region', { name: 'Photo 1', exact: true }).getByRole('img').waitFor();
});

test('what the readings speak against is known by one look, and says that it is suspect', async (t) => {
  const { url } = await open(t, newBook(t));
  const { page, hand } = await screen(PHONE);
  await page.goto(url);
  await hand.start('12 Pretend Lane');
  await hand.walk([
    { length: '40 ft', corner: 'Outside corner' },
    { length: '30 ft', corner: 'Outside corner' },
    { length: '40 ft', corner: 'Outside corner' },
    { length: '20 ft', corner: 'Outside corner' },
  ]);
  const closure = page.getByRole('region', { name: 'Closure' });
  await closure.and(page.locator('[data-state="gap"]')).waitFor();
  const named = await closure.getByRole('button', { name: /^Leg/ }).allInnerTexts();
  assert.ok(named.length >= 1);
  const row = page.locator(`main li[data-thing="${named[0].toLowerCase()}"]`);
  await row.and(page.locator('[data-state="read once"]')).getByText('suspect').waitFor();
});

// A house of which nearly all is read once, and nothing beside the tape was said.
async function hardlyChecked(t) {
  const served = await open(t, newBook(t));
  const { ask } = served;
  const { job } = await ask({ ask: 'start_job', address: '12 Pretend Lane' });
  for (const [i, length] of ['40 ft', '30 ft', '40 ft', '30 ft'].entries()) {
    await type(ask, job, i + 1, length);
    if (i < 3) await ask({ ask: 'corner', job, after_leg: i + 1, turn: { turn: 'outside' } });
  }
  for (const leg of [1, 2, 3, 4])
    await ask({ ask: 'pitch', job, leg, read: { by: 'number', in_12: 6 } });
  await ask({ ask: 'add_item', job, leg: 1, item: 'pipe', after: 0 });
  return { ...served, job };
}

test('more than nine open things stand on more than one page, and the last page leads to the first', async (t) => {
  const { url, ask, job } = await hardlyChecked(t);
  const seen = await screen(PHONE);
  const { page, hand } = seen;
  await page.goto(`${url}/#${job}/5`);
  const { check } = await ask({ ask: 'job', job });
  assert.ok(check.open.length > 9, `open: ${check.open.map(({ thing }) => thing)}`);
  const cards = page.getByRole('list', { name: 'Open items' }).locator('> li');
  await cards.nth(8).waitFor();
  const shown = () => cards.evaluateAll((all) => all.map((card) => card.dataset.thing));
  const first = await shown();
  assert.equal(first.length, 9);
  await hand.tap('Next page');
  await cards.and(page.locator(`[data-thing="${check.open[9].thing}"]`)).waitFor();
  assert.deepEqual(
    [...first, ...(await shown())],
    check.open.map(({ thing }) => thing),
  );
  await hand.tap('Next page');
  await cards.nth(8).waitFor();
  assert.deepEqual(await shown(), first);
});
