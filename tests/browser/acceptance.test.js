// One visit on every kind of screen and by every hand. Each figure is measured and printed beside
// its pass line, so that what a change costs is seen before it fails.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { HANDS, screenFor, tell } from './hands.js';
import { toPlace } from './screen.js';
import { answeredLate, noise, tilted } from './tilt.js';
import { rectangle, tHouse } from './walks.js';

for (const kind of HANDS) {
  const { name, size, letters = 1 } = kind;
  test(`a visit by ${name}`, async (t) => {
    const { url, ask } = await open(t, newBook(t));
    const seen = await screenFor(kind, ask);
    await seen.page.goto(url);
    const visit = { ...seen, ask, t, name, large: letters > 1, tall: size.height > 800 };

    const told = (what, figures) => tell(t, what, name, figures);
    told('rectangle', await rectangleIn30Taps(visit));
    told('bad keys', await badKeys(visit));
    told('swapped digits', await swappedDigits(visit));
    told('second reading', await secondReading(visit));
    told('pitch', await pitch(visit));
    told('leave-site check', await leaveSite(visit));
    told('controls', await leastControl(visit));
    assert.deepEqual(seen.wrong, []);
    assert.deepEqual([...seen.hosts], ['127.0.0.1']);
  });
}

const value = (page, thing) =>
  page
    .locator(`main ul[aria-label=Readings] > li[data-thing="${thing}"]`)
    .getAttribute('data-value');

async function rectangleIn30Taps({ page, hand, large, tall }) {
  await hand.start('12 Pretend Lane');
  hand.taps = 0;
  hand.scrolls = 0;
  await hand.tap('Read');
  let spoken = 0;
  const legs = rectangle('42 ft 7', '24 ft 6');
  for (const [i, { length, corner }] of legs.entries()) {
    await hand.book(length);
    const back = page.getByRole('region', { name: 'Read-back' });
    await back.and(page.locator(`[data-value="${length} in"]`)).waitFor();
    const said = await page.evaluate(() => window.spoken.at(-1));
    if (said === { 0: 'four two feet, seven inches', 1: 'two four feet, six inches' }[i % 2])
      spoken += 1;
    await hand.tap(back.getByRole('button', { name: 'Right', exact: true }));
    if (i < 3) await hand.tap(corner);
  }
  await page.locator('section[aria-label=Closure][data-state=closes]').waitFor();
  const { scrolls } = hand;
  assert.equal(spoken, 4);
  assert.ok(hand.taps <= 30, `${hand.taps} taps`);
  if (tall && !large) assert.equal(scrolls, 0);
  return `${hand.taps} taps (at most 30), ${scrolls} scrolls, ${spoken} of 4 spoken alike`;
}

async function badKeys({ page, hand }) {
  await hand.start('13 Pretend Lane');
  await hand.tap('Read');
  const pad = page.getByRole('group', { name: 'Keypad' });
  const slots = () =>
    pad
      .locator('[data-slot] .typed')
      .evaluateAll((all) => all.map((slot) => slot.textContent).join('|'));
  let refused = 0;
  const bad = [
    { keys: ['9', 'ft', '1'], key: '4', stands: '9|1|' },
    { keys: [], key: 'ft', stands: '9||' },
    { keys: ['0', 'ft'], key: 'Book it', stands: '0||' },
    { keys: ['4', '0'], key: '0', stands: '40||' },
    { keys: ['4', '2'], key: 'Book it', stands: '42||' },
  ];
  for (const [i, { keys, key, stands }] of bad.entries()) {
    const key_ = (named) => pad.getByRole('button', { name: named, exact: true });
    if (i === 1) await hand.tap(key_('Take back one'));
    else if (i > 0) await emptied(page, hand, pad);
    for (const before of keys) await hand.tap(key_(before));
    await page.waitForFunction(
      (wanted) =>
        [...document.querySelectorAll('[data-slot] .typed')].map((s) => s.textContent).join('|') ===
        wanted,
      stands,
    );
    await hand.tap(key_(key));
    await page.waitForFunction(
      () => (document.querySelector('.news [role=status]')?.textContent.trim().length ?? 0) > 10,
    );
    assert.equal(await slots(), stands);
    refused += 1;
  }
  await hand.tap('Put keypad away');
  return `${refused} of ${bad.length} refused in words and status, 0 changed a slot`;
}

// Takes back what is typed until every slot is empty.
async function emptied(page, hand, pad) {
  for (let key = 0; key < 8; key += 1) {
    const left = await pad
      .locator('[data-slot] .typed')
      .evaluateAll((all) => all.map((slot) => slot.textContent).join(''));
    const active = await pad.locator('[data-slot][aria-current]').getAttribute('data-slot');
    if (!left && active === 'ft') return;
    await hand.tap(pad.getByRole('button', { name: 'Take back one', exact: true }));
    await page.waitForFunction(
      ([was, slot]) =>
        [...document.querySelectorAll('[data-slot] .typed')].map((s) => s.textContent).join('') !==
          was || document.querySelector('[data-slot][aria-current]')?.dataset.slot !== slot,
      [left, active],
    );
  }
}

async function swappedDigits({ page, hand }) {
  await hand.start('14 Pretend Lane');
  const legs = tHouse({ stem: 20, left: 18, bar: 24, right: 18, width: 24 });
  legs[2] = { ...legs[2], length: '42 ft' };
  await hand.walk(legs);
  const closure = page.locator('section[aria-label=Closure][data-state=gap]');
  await closure.getByText(/18 ft/).first().waitFor();
  const named = await closure.getByRole('button', { name: /^Leg \d+$/ }).allInnerTexts();
  assert.ok(named.length <= 2 && named.includes('Leg 3'), named.join());
  hand.taps = 0;
  await hand.tap(closure.getByRole('button', { name: 'Leg 3', exact: true }));
  await hand.tap(
    page
      .getByRole('region', { name: 'Leg 3', exact: true })
      .getByRole('button', { name: 'Read again' }),
  );
  await page.getByRole('group', { name: 'Keypad' }).waitFor();
  assert.ok(hand.taps <= 3, `${hand.taps} taps`);
  return `gap of 18 ft said, ${named.join(' and ')} named (at most 2), ${hand.taps} taps to read again (at most 3)`;
}

// Goes on with the leg whose second reading the keypad waits for.
async function secondReading({ page, hand }) {
  const hidden = async () => {
    assert.doesNotMatch(await page.content(), /\b42\b/);
    assert.doesNotMatch(await page.locator('body').ariaSnapshot(), /\b42\b/);
  };
  await hidden();
  await hand.book('24 ft');
  await page
    .getByRole('region', { name: 'Read-back' })
    .getByText(/Read it a third time/)
    .waitFor();
  const copies = await page.getByRole('button', { name: /match|same|copy/i }).count();
  assert.equal(copies, 0);
  await hand.tap(
    page.getByRole('region', { name: 'Read-back' }).getByRole('button', { name: 'Read again' }),
  );
  await page.getByRole('group', { name: 'Keypad' }).waitFor();
  await hidden();
  await hand.book('24 ft');
  await page.locator('section[aria-label=Closure][data-state=closes]').waitFor();
  const leaf = page.getByRole('region', { name: 'Leg 3', exact: true });
  await hand.tap(page.locator('main li[data-thing="leg 3"] button').first());
  await hand.tap(leaf.getByRole('button', { name: 'Story', exact: true }));
  await leaf.getByRole('region', { name: 'Story' }).locator('li[data-value]').nth(2).waitFor();
  const kept = await leaf.getByRole('region', { name: 'Story' }).locator('li[data-value]').count();
  assert.equal(kept, 3);
  assert.equal(await value(page, 'leg 3'), '24 ft');
  return `first value absent from page and accessibility tree, third asked for, ${kept} of 3 kept`;
}

async function pitch({ page, hand, t }) {
  await toPlace({ page, hand }, 'Plan');
  await hand.tap('List');
  await hand.tap(page.locator('[data-thing="face 1"]').getByRole('button').first());
  const scatter = noise(3);
  let lies = 1;
  await tilted(t, page, () => lies * 26.6 + 0.6 + 0.05 * scatter());
  // The page itself notes when it waits and captures, and how long it was kept from its work.
  await page.evaluate(() => {
    window.late = 0;
    let last = performance.now();
    setInterval(() => {
      const now = performance.now();
      window.late += Math.max(0, now - last - 60);
      last = now;
    }, 20);
    new MutationObserver(() => {
      const region = document.querySelector('section[aria-label="Pitch"]');
      if (region) window[region.dataset.state] ??= [performance.now(), window.late];
    }).observe(document.body, { subtree: true, childList: true, attributes: true });
  });
  await hand.tap('Pitch');
  const region = page.getByRole('region', { name: 'Pitch', exact: true });
  const captured = region.and(page.locator('[data-state=captured]'));
  await captured.waitFor();
  const [took, stood, until] = await page.evaluate(() => [
    window.captured[0] - window.waiting[0],
    window.captured[1] - window.waiting[1],
    window.captured[0],
  ]);
  const late = stood + (await answeredLate(page, until));
  assert.ok(took >= 1700 && took <= 2300 + late, `${took} ms, ${late} ms of them kept from work`);
  lies = -1;
  await hand.tap(region.getByRole('button', { name: 'Flip and repeat' }));
  await region.and(page.locator('[data-state=waiting]')).waitFor();
  await captured.waitFor();
  const pair = parseFloat(await region.getAttribute('data-value'));
  assert.ok(Math.abs(pair - 26.6) <= 0.1, `${pair}`);
  return `captured in ${(took / 1000).toFixed(2)} s (2.0 and 0.3, ${late.toFixed(0)} ms kept from work), pair ${pair}° of 26.6° (within 0.1°)`;
}

async function leaveSite({ page, hand }) {
  await toPlace({ page, hand }, 'Leave-site check');
  const list = page.getByRole('list', { name: 'Open items' });
  await list.getByRole('listitem').first().waitFor();
  const gaps = new Set();
  let most = 0;
  for (let turned = 0; turned < 3; turned += 1) {
    const cards = await list
      .locator('> li')
      .evaluateAll((all) => all.map((li) => li.dataset.thing));
    most = Math.max(most, cards.length);
    const before = gaps.size;
    for (const card of cards) gaps.add(card);
    const next = page.getByRole('button', { name: 'Next page' });
    if (gaps.size === before || (await next.count()) === 0) break;
    await hand.tap(next);
  }
  const asked = ['pitches', 'deck', 'sides', 'driveway', 'permissions', 'promise', 'copies'];
  const found = asked.filter((gap) => gaps.has(gap));
  assert.ok(most <= 9, `${most} cards`);
  assert.deepEqual(found, asked);
  while ((await list.locator('[data-thing="promise"]').count()) === 0) await hand.tap('Next page');
  hand.taps = 0;
  await hand.tap(list.locator('[data-thing="promise"]').getByRole('button', { name: 'Go' }));
  await page.locator('main[data-place="Arrive"]').waitFor();
  await hand.tap('Nothing promised');
  await hand.tap('Back to check');
  const besides = hand.taps - 1;
  await list.locator('[data-thing="promise"]').waitFor({ state: 'detached' });
  assert.ok(besides <= 2, `${besides} taps`);
  hand.taps = 0;
  await hand.tap('Leave');
  await page
    .getByRole('status')
    .filter({ hasText: /check complete/i })
    .waitFor();
  return `${most} cards a page (at most 9), ${found.length} of ${asked.length} gaps found, ${besides} taps besides the mending (at most 2), left in ${hand.taps} tap`;
}

// The smallest control of every place, and whether anything runs over the side.
async function leastControl({ page, hand }) {
  let least = Infinity;
  let count = 0;
  let over = 0;
  for (const place of [
    'Today',
    'Arrive',
    'Walk-round',
    'Field book',
    'Plan',
    'Leave-site check',
    'Takeoff',
    'Job file',
  ]) {
    await toPlace({ page, hand }, place);
    const [small, many, sideways] = await page.evaluate(() => {
      const sizes = [...document.querySelectorAll('button, input, select, a[href]')]
        .map((control) =>
          control.matches('input') ? (control.closest('label') ?? control) : control,
        )
        .map((control) => control.getBoundingClientRect())
        .filter(({ width, height }) => width > 1 && height > 1)
        .map(({ width, height }) => Math.min(width, height));
      return [Math.min(...sizes), sizes.length, document.documentElement.scrollWidth - innerWidth];
    });
    least = Math.min(least, small);
    count += many;
    over = Math.max(over, sideways);
  }
  assert.ok(least >= 71.5, `${least} px`);
  assert.ok(over <= 0, `${over} px to the side`);
  return `${count} controls, the smallest ${least.toFixed(0)} px (at least 72), ${over} px to the side`;
}
