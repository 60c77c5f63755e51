import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { addPretendHouse, newBook, open } from './book.js';
import { NARROW, PHONE, picture, screen, toPlace, WIDE } from './screen.js';
import { rectangle } from './walks.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

// The pretend house at its takeoff, with the last reply that the page was given of it.
async function atTakeoff(t, size) {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { url, ask } = await open(t, folder);
  const seen = await screen(size);
  const replies = [];
  seen.page.on('response', async (response) => {
    if (!response.url().endsWith('/command')) return;
    const reply = await response.json().catch(() => null);
    if (reply?.reply === 'takeoff') replies.push(reply);
  });
  await seen.page.goto(url);
  await seen.hand.tap(seen.page.getByRole('list', { name: 'Stops' }).getByRole('button').first());
  // At once: a place chosen while the job is still fetched is kept.
  await toPlace(seen, 'Takeoff');
  await seen.page.getByRole('region', { name: 'Order list' }).waitFor();
  return { ...seen, ask, last: () => replies.at(-1) };
}

const row = (page, part, key) =>
  page.getByRole('region', { name: part, exact: true }).locator(`li[data-line="${key}"] > .row`);

const figureOf = (line) => line.locator('.figure > .value').innerText().then(plain);
const plain = (text) => text.replace(/\s+/g, ' ').trim();

test('from a total to a reading in at most four taps', async (t) => {
  const seen = await atTakeoff(t, PHONE);
  const { page, hand } = seen;
  const from = async (...taps) => {
    hand.taps = 0;
    for (const tap of taps) await hand.tap(tap);
    const reading = page.getByRole('region', { name: 'Story' }).getByRole('listitem').first();
    assert.match(await reading.getAttribute('data-value'), /^\d+ ft/);
    const taken = hand.taps;
    assert.ok(taken <= 4, `${taken} taps`);
    await toPlace(seen, 'Takeoff');
    return taken;
  };
  const leg = page.getByRole('button', { name: /^Leg 13/ }).first();
  const story = page.getByRole('region', { name: 'Leg 13', exact: true }).getByText('Story');
  const squares = await from(row(page, 'Squares', 'to order'), leg, story);
  const materials = row(page, 'Price', 'materials');
  const field = page.locator('li[data-line="materials"] li[data-line="pack field"] > .row');
  const price = await from(materials, field, leg, story);
  t.diagnostic(`${squares} taps from squares, ${price} from the price`);
});

for (const [name, size] of Object.entries({ phone: PHONE, wide: WIDE })) {
  test(`every figure of the leaf comes with the reply, ${name}`, async (t) => {
    const { page, hand, last, wrong } = await atTakeoff(t, size);
    for (const [part, key] of [
      ['Price', 'materials'],
      ['Order list', 'field'],
      ['Tear-off', 'weight'],
    ]) {
      await hand.tap(row(page, part, key));
    }
    await picture(page, `takeoff-${name}`);
    await page.screenshot({
      path: new URL(`../out/takeoff-${name}-whole.png`, import.meta.url).pathname,
      fullPage: true,
    });
    const told = plain(JSON.stringify(last()).replaceAll('\\"', '"'));
    const shown = await page
      .locator('main')
      .locator('.figure > .value, .beside, .word, p, .costs, .rate .value, [data-rate] .value')
      .allInnerTexts();
    const figures = shown.map(plain).filter((text) => /\d/.test(text));
    for (const figure of figures) {
      const parts = figure.replace(/^Total /, '').split(/ Total (?=\$)/);
      for (const part of parts) assert.ok(told.includes(part), part);
    }
    assert.ok(figures.length > 60, `${figures.length}`);
    assert.deepEqual(wrong, []);
    t.diagnostic(`${figures.length} figures shown, each in the reply`);
  });
}

test('a rate changed for the job moves the total, Undo restores it, and a blank price is said', async (t) => {
  const { page, hand } = await atTakeoff(t, PHONE);
  const total = row(page, 'Price', 'total');
  const first = await figureOf(total);
  await hand.tap(row(page, 'Price', 'materials'));
  const field = page.locator('li[data-line="materials"] li[data-line="pack field"]');
  await hand.tap(field.locator('> .row'));
  const change = field.locator('[data-rate="field.price"]');
  const differs = (from) =>
    page.waitForFunction(
      (was) =>
        document
          .querySelector('li[data-line="total"] > .row .figure > .value')
          .innerText.replace(/\s+/g, ' ')
          .trim() !== was,
      from,
    );
  await hand.tap(change.getByRole('button', { name: /^Change/ }));
  await change.getByRole('textbox').fill('thirty');
  await hand.tap(change.getByRole('button', { name: 'Book it' }));
  const refused = page.getByRole('alert').or(page.getByRole('status'));
  await refused.filter({ hasText: 'rates.field.price' }).first().waitFor();
  assert.equal(await figureOf(total), first);
  await change.getByRole('textbox').fill('40.00');
  await hand.tap(change.getByRole('button', { name: 'Book it' }));
  await differs(first);
  const second = await figureOf(total);
  assert.equal(plain(await change.locator('.second').innerText()), 'our rate 34.50');
  await hand.tap('Undo');
  await differs(second);
  assert.equal(await figureOf(total), first);

  await hand.tap(change.getByRole('button', { name: /^Change/ }));
  await hand.tap(change.getByRole('button', { name: 'Leave blank' }));
  await differs(first);
  assert.match(await field.locator('> .row').innerText(), /not priced/);
  const lacks = page.getByRole('list', { name: 'Not priced' });
  await lacks.filter({ hasText: 'field: its price is blank' }).waitFor();
  await picture(page, 'takeoff-blank-price');
  t.diagnostic(`${first}, then ${second}, then ${first} again`);
});

test('what nobody knows stands at the top and one tap leads to where it is said', async (t) => {
  const { url } = await open(t, newBook(t));
  const seen = await screen(PHONE);
  const { page, hand } = seen;
  await page.goto(url);
  await hand.start('12 Pretend Lane');
  await toPlace(seen, 'Takeoff');
  await page.getByRole('region', { name: 'Nothing to take off yet' }).waitFor();
  await picture(page, 'takeoff-empty');
  await toPlace(seen, 'Field book');
  await hand.walk(rectangle('40 ft', '24 ft'));
  await toPlace(seen, 'Takeoff');
  const lack = page.getByRole('list', { name: 'Nothing to take off yet' });
  assert.match(await lack.innerText(), /nobody said what rises at leg 1/);
  await hand.tap(lack.getByRole('button'));
  const face = page.getByRole('region', { name: 'Face 1' });
  await face.waitFor();
  const job = /^#([0-9a-f-]{36})/.exec(new URL(page.url()).hash)[1];
  for (const leg of [1, 2, 3, 4]) {
    await page.request.post(`${url}/command`, {
      data: { ask: 'pitch', job, leg, read: { by: 'number', in_12: 6 } },
    });
  }
  await page.reload();
  await toPlace(seen, 'Takeoff');
  const unknown = page.getByRole('list', { name: 'Not known' });
  const layers = unknown.getByRole('listitem').filter({ hasText: 'layers' });
  assert.match(await layers.innerText(), /Total \$[\d,.]+ to \$[\d,.]+/);
  await picture(page, 'takeoff-not-known');
  hand.taps = 0;
  await hand.tap(layers.getByRole('button', { name: 'Layers' }));
  await hand.tap(
    page.getByRole('region', { name: 'Layers' }).getByRole('button', { name: '1 layer' }),
  );
  assert.equal(hand.taps, 2);
  await page.locator('li[data-thing="layers"][data-value="1 layer"]').waitFor();
  await picture(page, 'takeoff-layers-said');
  await toPlace(seen, 'Takeoff');
  await page.getByRole('region', { name: 'Order list' }).waitFor();
  await unknown.getByRole('listitem').filter({ hasText: 'layers' }).waitFor({ state: 'detached' });
});

test('a pipe is added on a face, photographed and sized without a decimal point', async (t) => {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { url } = await open(t, folder);
  const seen = await screen(PHONE);
  const { page, hand, wrong } = seen;
  await page.goto(url);
  await hand.openFirstStop();
  await toPlace(seen, 'Plan');
  await hand.tap('List');
  const old = page.getByRole('list', { name: 'Items' }).locator('li[data-thing="pipe 1"]');
  assert.equal(await old.getAttribute('data-value'), '3 in');
  await hand.tap(old.getByRole('button').first());
  const region = page.getByRole('region', { name: 'Pipe 1', exact: true });
  assert.match(await region.innerText(), /taped/);
  await region.getByRole('img').waitFor();
  await picture(page, 'items-pipe-1');
  for (const name of ['Read again', 'Photo', "Can't reach", 'Strike', 'Story']) {
    await region.getByRole('button', { name, exact: true }).waitFor();
  }
  await hand.tap(page.locator('li[data-thing="face 10"]').getByRole('button').first());
  const face = page.getByRole('region', { name: 'Face 10' });
  await hand.tap(face.getByRole('button', { name: 'Add', exact: true }));
  await picture(page, 'items-add');
  await hand.tap(face.getByRole('button', { name: 'Pipe', exact: true }));
  const added = page.getByRole('region', { name: 'Pipe 2', exact: true });
  await added.getByRole('button', { name: 'Photo', exact: true }).waitFor();
  await picture(page, 'items-pipe-2');
  await hand.tap(added.getByRole('button', { name: 'Read size' }));
  await hand.book('1 in 1/2');
  assert.equal(
    await page.getByRole('region', { name: 'Read-back' }).getAttribute('data-value'),
    '1 1/2 in',
  );
  await toPlace(seen, 'Plan');
  await hand.tap('List');
  const value = page.getByRole('list', { name: 'Items' }).locator('li[data-thing="pipe 2"]');
  assert.equal(await value.getAttribute('data-value'), '1 1/2 in');
  assert.deepEqual(wrong, []);
});

const SCREENS = [
  { name: 'phone', size: PHONE },
  { name: 'wide', size: WIDE },
  { name: 'narrow', size: NARROW },
  { name: 'letters twice as large', size: PHONE, letters: 2 },
];

for (const { name, size, letters = 1 } of SCREENS) {
  test(`the takeoff loses nothing and has no serious fault of accessibility: ${name}`, async (t) => {
    const { page, hand, wrong } = await atTakeoff(t, size);
    if (letters > 1) {
      await page.evaluate((times) => {
        document.documentElement.style.fontSize = `${112.5 * times}%`;
      }, letters);
    }
    await hand.tap(row(page, 'Price', 'materials'));
    await hand.tap(page.locator('li[data-line="materials"] li[data-line="pack field"] > .row'));
    await hand.tap(
      page
        .locator('[data-rate="field.price"]')
        .first()
        .getByRole('button', { name: /^Change/ }),
    );
    await picture(page, `takeoff-open-${name.replaceAll(' ', '-')}`);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(sideways <= 0, `${sideways} px to the side`);
    const least = size.width < 1000 ? 72 : 24;
    const controls = await page.locator('main button, main input').evaluateAll((all) =>
      all.map((one) => {
        const { width, height, right } = one.getBoundingClientRect();
        const cut = one.scrollWidth > one.clientWidth + 1;
        return { name: one.innerText || one.type, width, height, right, cut };
      }),
    );
    for (const { name: named, width, height, right, cut } of controls) {
      assert.ok(width >= least - 0.5 && height >= least - 0.5, `${named} ${width} x ${height}`);
      assert.ok(right <= size.width + 0.5, `${named} is off the side`);
      assert.ok(!cut, `${named} is cut`);
    }
    await page.evaluate(axe);
    const found = await page.evaluate(() =>
      window.axe.run({ rules: { 'color-contrast-enhanced': { enabled: true } } }),
    );
    const grave = found.violations.filter(({ impact }) => ['serious', 'critical'].includes(impact));
    assert.deepEqual(
      grave.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]),
      [],
    );
    assert.deepEqual(wrong, []);
    t.diagnostic(`${controls.length} controls, 0 serious, ${found.passes.length} rules passed`);
  });
}
