import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { addPretendHouse, newBook, open } from './book.js';
import { NARROW, PHONE, picture, screen, SMALL_PHONE, toPlace, WIDE } from './screen.js';
import { type } from './typing.js';
import { tHouse } from './walks.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

// The main states of the screens, one after another, each with its name.
async function* states({ page, hand }, address) {
  yield 'Today';
  await hand.start(address);
  yield 'Field book, empty';
  await hand.tap('Read');
  yield 'Keypad';
  const pad = page.getByRole('group', { name: 'Keypad' });
  await hand.tap(pad.getByRole('button', { name: 'Fraction', exact: true }));
  yield 'Keypad, fractions';
  await hand.tap(pad.getByRole('button', { name: 'Fraction', exact: true }));
  const legs = tHouse({ stem: 20, left: 18, bar: 24, right: 18, width: 24 });
  legs[2] = { ...legs[2], length: '42 ft' };
  await hand.book(legs[0].length);
  yield 'Read-back and corner';
  await hand.tap('Angled…');
  yield 'Angled corner';
  await hand.tap('Angled…');
  await hand.tap(legs[0].corner);
  for (const [i, { length, corner }] of legs.entries()) {
    if (i === 0) continue;
    await hand.book(length);
    if (i < 7) await hand.tap(corner);
  }
  yield 'Gap';
  await hand.tap(
    page.getByRole('region', { name: 'Closure' }).getByRole('button', { name: 'Leg 3' }),
  );
  await hand.tap(
    page.getByRole('region', { name: 'Leg 3', exact: true }).getByRole('button', { name: 'Story' }),
  );
  yield 'Leg and story';
  await hand.tap("What's left");
  yield "What's left";
  await hand.tap(page.getByRole('dialog').getByRole('button', { name: 'Close' }));
  await toPlace({ page, hand }, 'Settings');
  yield 'Settings';
  await hand.tap(page.getByRole('dialog').getByRole('button', { name: 'Close' }));
  await toPlace({ page, hand }, 'Plan');
  yield 'Plan';
}

const slug = (name) => name.toLowerCase().replace(/[^a-z]+/g, '-');

for (const [name, size] of Object.entries({ phone: PHONE, wide: WIDE })) {
  test(`no serious fault of accessibility at any place, ${name}`, async (t) => {
    const { url } = await open(t, newBook(t));
    const seen = await screen(size);
    await seen.page.goto(url);
    let rules = 0;
    let at = 0;
    for await (const state of states(seen, '12 Pretend Lane')) {
      await picture(seen.page, `${name}-${slug(state)}`);
      const found = await judged(seen.page);
      const grave = found.violations.filter(({ impact }) =>
        ['serious', 'critical'].includes(impact),
      );
      const named = grave.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]);
      assert.deepEqual(named, [], state);
      rules += found.passes.length;
      at += 1;
    }
    assert.deepEqual([...seen.hosts], ['127.0.0.1']);
    assert.deepEqual(seen.wrong, []);
    t.diagnostic(`${at} states, 0 serious, ${rules} rules passed; every request went to 127.0.0.1`);
  });
}

// Text at 7:1 is asked for beside the rules of the levels A and AA.
async function judged(page) {
  await page.evaluate(axe);
  return page.evaluate(() =>
    window.axe.run({ rules: { 'color-contrast-enhanced': { enabled: true } } }),
  );
}

// The least width and height of a key, px: in a straight line over the width of the screen.
function leastKey(width, cold) {
  const share = Math.min(Math.max((width - 320) / 70, 0), 1);
  const [wide, high] = cold ? [118, 110] : [110, 84];
  return [90 + share * (wide - 90), 72 + share * (high - 72)];
}

// Every control in sight, with its name and box; a label counts for its input.
const controls = (page) =>
  page.evaluate(async () => {
    // Letters of the fallback, before ours are there, take another room.
    await document.fonts.ready;
    const shown = (box) => box.width > 1 && box.height > 1;
    return [...document.querySelectorAll('button, input, select, a[href]')]
      .map((control) => control.closest('label:has(input[type=radio])') ?? control)
      .map((control) => ({
        name: control.innerText.trim() || control.type,
        key: !!control.closest('[aria-label=Keypad]'),
        bar:
          ['Photo', 'Read', "What's left"].includes(control.innerText.trim()) &&
          !!control.closest('.bar'),
        cut:
          control.scrollWidth > control.clientWidth + 1 ||
          control.scrollHeight > control.clientHeight + 1,
        edge: getComputedStyle(control).borderTopColor,
        box: control.getBoundingClientRect().toJSON(),
      }))
      .filter(({ box }) => shown(box));
  });

const HANDS = [
  { name: 'a phone', size: PHONE },
  { name: 'a small phone', size: SMALL_PHONE },
  { name: 'the narrowest phone', size: NARROW },
  { name: 'cold hands', size: PHONE, settings: ['cold_hands'] },
  { name: 'a left hand', size: PHONE, settings: ['mirror_hand'] },
  {
    name: 'cold hands on the narrowest phone',
    size: NARROW,
    settings: ['cold_hands', 'mirror_hand'],
  },
  { name: 'letters twice as large', size: PHONE, letters: 2 },
  { name: 'letters twice as large on the narrowest phone', size: NARROW, letters: 2 },
];

for (const { name, size, settings = [], letters = 1 } of HANDS) {
  test(`every control is large enough and nothing is lost: ${name}`, async (t) => {
    const { url, ask } = await open(t, newBook(t));
    for (const set of settings) await ask({ ask: 'set', setting: { set, to: true } });
    const seen = await screen(size);
    const { page } = seen;
    await page.goto(url);
    await page.evaluate((times) => {
      if (times > 1) document.documentElement.style.fontSize = `${112.5 * times}%`;
    }, letters);
    const [width, height] = leastKey(size.width, settings.includes('cold_hands'));
    const [barWidth, barHeight] = leastKey(size.width, false);
    let measured = 0;
    for await (const state of states(seen, '12 Pretend Lane')) {
      const where = `${state}: `;
      for (const { name: named, key, bar, cut, box } of await controls(page)) {
        const [w, h] = key ? [width, height] : bar ? [barWidth, barHeight] : [72, 72];
        // Half a pixel for the rounding of a grid.
        assert.ok(
          box.width >= w - 0.5 && box.height >= h - 0.5,
          `${where}${named} ${box.width} x ${box.height}`,
        );
        assert.ok(!cut, `${where}${named} is cut`);
        assert.ok(
          box.left >= 0 && box.right <= size.width + 0.5,
          `${where}${named} is off the side`,
        );
        measured += 1;
      }
      const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(sideways <= 0, `${where}${sideways} px to the side`);
      if (['Keypad', 'Leg and story', 'Read-back and corner'].includes(state)) {
        await picture(page, `${slug(name)}-${slug(state)}`);
      }
    }
    assert.deepEqual(seen.wrong, []);
    t.diagnostic(`${measured} controls measured, none too small, none cut`);
  });
}

test('the main acts lie where the thumb is, for both hands', async (t) => {
  for (const mirror of [false, true]) {
    const { url, ask } = await open(t, newBook(t));
    await ask({ ask: 'set', setting: { set: 'mirror_hand', to: mirror } });
    const { page, hand } = await screen(PHONE);
    await page.goto(url);
    await reached(page, 'Start a job', 'Read', 'Photo');
    await hand.start('12 Pretend Lane');
    await hand.tap('Read');
    await reached(
      page,
      'Book it',
      'Field book Places',
      'Photo',
      'Put keypad away',
      '1',
      'Fraction',
    );
    const digits = await Promise.all(
      ['1', '2', '3'].map((digit) => hand.button(digit).boundingBox()),
    );
    assert.ok(digits[0].x < digits[1].x && digits[1].x < digits[2].x, 'digits keep their order');
    const book = await hand.button('Book it').boundingBox();
    assert.equal(book.x < PHONE.width / 2, mirror, 'Book it is at the thumb');
    await hand.book('42 ft 7');
    await reached(page, 'Right', 'Strike', 'Outside corner', 'Inside corner');
  }
});

// In the middle or lower part, not in the last 24 px, without a scroll.
async function reached(page, ...names) {
  for (const name of names) {
    const box = await page.getByRole('button', { name, exact: true }).last().boundingBox();
    const middle = box.y + box.height / 2;
    assert.ok(middle >= PHONE.height * 0.33, `${name} is too high: ${middle}`);
    assert.ok(
      box.y + box.height <= PHONE.height - 24 + 0.5,
      `${name} is too low: ${box.y + box.height}`,
    );
  }
}

test('booked figures are at least 40 px, outlines at 4.5 to 1, and the states differ without color', async (t) => {
  const { url } = await open(t, newBook(t));
  const seen = await screen(PHONE);
  const { page } = seen;
  await page.goto(url);
  let figures = 0;
  const marks = new Map();
  for await (const state of states(seen, '12 Pretend Lane')) {
    const sizes = await page.$$eval(
      '[data-thing] .figure > .value, [data-slot] .typed, [aria-label=Read-back] .value',
      (all) => all.map((one) => parseFloat(getComputedStyle(one).fontSize)),
    );
    for (const px of sizes) assert.ok(px >= 40, `${state}: ${px} px`);
    figures += sizes.length;
    for (const { name, edge } of await controls(page)) {
      const ratio = contrast(edge, 'rgb(250, 248, 241)');
      assert.ok(ratio >= 4.5 || ratio === 1, `${state}: outline of ${name} at ${ratio}`);
    }
    for (const [mark, drawing] of await page.$$eval('[data-mark]', (all) =>
      all.map((one) => [one.dataset.mark, one.innerHTML]),
    )) {
      marks.set(mark, drawing);
    }
  }
  assert.equal(new Set(marks.values()).size, marks.size);
  t.diagnostic(`${figures} figures measured; ${marks.size} states, each with a mark of its own`);
});

// The contrast of two colors by the formula of WCAG 2.2.
function contrast(a, b) {
  const light = (color) => {
    const [r, g, blue] = color.match(/[\d.]+/g).map((part) => {
      const share = Number(part) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue + 0.05;
  };
  const [x, y] = [light(a), light(b)];
  return Math.max(x, y) / Math.min(x, y);
}

// A job in which things are known in every way a leg can be, and the pretend house beside it.
async function knownInEveryWay(t) {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const served = await open(t, folder);
  const { ask } = served;
  const { job } = await ask({ ask: 'start_job', address: '12 Pretend Lane' });
  const corner = (after_leg) => ask({ ask: 'corner', job, after_leg, turn: { turn: 'straight' } });
  await type(ask, job, 1, '10 ft');
  await corner(1);
  await type(ask, job, 2, '11 ft', 'told');
  await corner(2);
  await type(ask, job, 3, '12 ft', 'off_photo');
  await corner(3);
  await ask({ ask: 'cannot_get', job, thing: { thing: 'leg', leg: 4 }, reason: null });
  await corner(4);
  for (const length of ['13 ft', '13 ft']) await type(ask, job, 5, length);
  await corner(5);
  for (const length of ['14 ft', '20 ft']) await type(ask, job, 6, length);
  await corner(6);
  const settled = await type(ask, job, 7, '15 ft');
  await ask({ ask: 'settle_at_desk', job, entries: [settled.pad.read_back.reading] });
  await corner(7);
  const struck = await type(ask, job, 8, '16 ft');
  await ask({ ask: 'strike', job, entry: struck.pad.read_back.reading, reason: null });
  return { ...served, job };
}

// Each mark in sight as gray points, 36 x 36, as it is drawn.
const marksInGray = (page) =>
  page.evaluate(async () => {
    const found = {};
    for (const mark of document.querySelectorAll('svg[data-mark]')) {
      const copy = mark.cloneNode(true);
      const inked = [mark, ...mark.querySelectorAll('*')];
      for (const [i, part] of [copy, ...copy.querySelectorAll('*')].entries()) {
        const drawn = getComputedStyle(inked[i]);
        for (const name of ['stroke-width', 'stroke-dasharray'])
          part.setAttribute(name, drawn.getPropertyValue(name));
        // Shapes alone are compared: whatever is drawn is black.
        for (const name of ['fill', 'stroke'])
          part.setAttribute(name, drawn.getPropertyValue(name) === 'none' ? 'none' : 'black');
      }
      copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
      const file = new Blob([copy.outerHTML], { type: 'image/svg+xml' });
      const image = new Image(36, 36);
      image.src = URL.createObjectURL(file);
      await image.decode();
      const paper = new OffscreenCanvas(36, 36).getContext('2d');
      paper.fillStyle = 'white';
      paper.fillRect(0, 0, 36, 36);
      paper.drawImage(image, 0, 0, 36, 36);
      const { data } = paper.getImageData(0, 0, 36, 36);
      const gray = [];
      for (let at = 0; at < data.length; at += 4)
        gray.push(Math.round(0.2126 * data[at] + 0.7152 * data[at + 1] + 0.0722 * data[at + 2]));
      found[mark.dataset.mark] = gray;
    }
    return found;
  });

test('the marks of all states are told apart in gray', async (t) => {
  const { url, ask, job } = await knownInEveryWay(t);
  const { page, hand } = await screen(PHONE);
  await page.goto(`${url}/#${job}/3`);
  await page.locator('main li[data-thing="leg 8"]').waitFor();
  await hand.tap(page.locator('main li[data-thing="leg 8"] button').first());
  await hand.tap(
    page.getByRole('region', { name: 'Leg 8', exact: true }).getByRole('button', { name: 'Story' }),
  );
  await page.getByRole('region', { name: 'Story' }).locator('svg').first().waitFor();
  const marks = await marksInGray(page);
  await page.screenshot({ path: '../out/states.png', fullPage: true });
  await toPlace({ page, hand }, 'Today');
  await hand.openFirstStop();
  const [, pretend] = /#([0-9a-f-]{36})/.exec(page.url());
  await ask({ ask: 'visit', job: pretend, note: { note: 'front', heading: 0 } });
  const photo = readFileSync(new URL('../../assets/demo/tape-leg-2.jpg', import.meta.url));
  const about = new URLSearchParams({ job: pretend, from: 'camera', heading: 92 });
  await fetch(`${url}/photo?${about}`, {
    method: 'POST',
    body: Buffer.concat([photo, Buffer.from([1])]),
  });
  await page.reload();
  await page.locator('nav').waitFor();
  await toPlace({ page, hand }, 'Plan');
  await hand.tap('List');
  await page.locator('main li[data-thing^="photo"][data-state=guess]').first().waitFor();
  Object.assign(marks, await marksInGray(page));
  const names = Object.keys(marks);
  let closest = Infinity;
  let pair = '';
  for (const [i, one] of names.entries()) {
    for (const other of names.slice(i + 1)) {
      const apart = marks[one].filter((gray, at) => Math.abs(gray - marks[other][at]) > 96).length;
      if (apart < closest) [closest, pair] = [apart, `${one} and ${other}`];
    }
  }
  for (const state of [
    'not_looked',
    'hearsay',
    'worked_out',
    'read_once',
    'off_photo',
    'settled_at_desk',
    'agreed',
    'proved',
    'cannot_get',
    'suspect',
    'struck',
    'confirmed',
    'guess',
  ])
    assert.ok(names.includes(state), `${state} was not seen: ${names}`);
  assert.ok(closest >= 30, `${pair} differ in ${closest} of 1296 points`);
  t.diagnostic(
    `${names.length} marks; the two most alike, ${pair}, differ in ${closest} of 1296 points of gray`,
  );
});
