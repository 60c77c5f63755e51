// The plan on its place: nothing written on it meets anything else, on any screen and in any letters.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { addPretendHouse, newBook, open } from './book.js';
import { NARROW, PHONE, picture, screen, toPlace, WIDE } from './screen.js';
import { tHouse } from './walks.js';

const SCREENS = [
  { name: '320 px', size: NARROW, letters: 1 },
  { name: '390 px', size: PHONE, letters: 1 },
  { name: 'text at 200 %', size: PHONE, letters: 2 },
  { name: '320 px and text at 200 %', size: NARROW, letters: 2 },
  { name: '1280 px', size: WIDE, letters: 1 },
];

// A page at the plan of the newest house of a book.
async function atPlan(t, folder, { size, letters }) {
  const { url } = await open(t, folder);
  const seen = await screen(size);
  await seen.context.addInitScript((times) => {
    addEventListener('DOMContentLoaded', () => {
      document.documentElement.style.fontSize = `${112.5 * times}%`;
    });
  }, letters);
  await seen.page.goto(url);
  await seen.hand.openFirstStop();
  await toPlace(seen, 'Plan');
  return seen;
}

const drawing = (page) => page.getByRole('img', { name: /^Plan of the roof: / });

/**
 * What meets on a drawing, measured on the page: each text as the rectangle of its letters, turned as
 * it is, each line as its points from end to end. A letter's rectangle is as high as its font; what is
 * asked for is its ink, so a quarter of that is taken off above and below.
 */
function meetings(svg) {
  const to = (node) => {
    const matrix = node.getScreenCTM();
    return (x, y) => new DOMPoint(x, y).matrixTransform(matrix);
  };
  const texts = [...svg.querySelectorAll('text')].map((text) => {
    const { x, y, width, height } = text.getBBox();
    const at = to(text);
    const [top, foot] = [y + height * 0.25, y + height * 0.75];
    return {
      words: text.textContent,
      corners: [at(x, top), at(x + width, top), at(x + width, foot), at(x, foot)],
      size: parseFloat(getComputedStyle(text).fontSize),
    };
  });
  // One way is free between two that do not meet (separating axis theorem).
  const apart = (a, b) =>
    [a, b].some((ring) =>
      ring.some((p, i) => {
        const q = ring[(i + 1) % ring.length];
        const [nx, ny] = [q.y - p.y, p.x - q.x];
        const on = (points) => points.map((point) => point.x * nx + point.y * ny);
        const [s, t] = [on(a), on(b)];
        return Math.max(...s) <= Math.min(...t) || Math.max(...t) <= Math.min(...s);
      }),
    );
  const lines = [...svg.querySelectorAll('path')].map((path) => {
    const at = to(path);
    const long = path.getTotalLength();
    const steps = Math.max(2, Math.ceil(long / 2));
    return Array.from({ length: steps + 1 }, (_, i) => {
      const { x, y } = path.getPointAtLength((long * i) / steps);
      return at(x, y);
    });
  });
  const holds = (ring, point) =>
    !apart(ring, [point, { x: point.x + 0.01, y: point.y }, { x: point.x, y: point.y + 0.01 }]);
  const found = [];
  const sheet = svg.getBoundingClientRect();
  texts.forEach(({ words, corners }, i) => {
    for (const other of texts.slice(i + 1))
      if (!apart(corners, other.corners)) found.push(`${words} over ${other.words}`);
    if (lines.some((points) => points.some((point) => holds(corners, point))))
      found.push(`${words} on a line`);
    const past = ({ x, y }) =>
      x < sheet.left - 1 || x > sheet.right + 1 || y < sheet.top - 1 || y > sheet.bottom + 1;
    if (corners.some(past)) found.push(`${words} past the sheet`);
  });
  return { found, texts: texts.length, smallest: Math.min(...texts.map(({ size }) => size)) };
}

async function isClear(seen, letters, about) {
  const { page, wrong } = seen;
  await drawing(page).waitFor();
  await page.evaluate(() => document.fonts.ready);
  const { found, texts, smallest } = await drawing(page).evaluate(meetings);
  assert.deepEqual(found, [], about);
  assert.ok(texts > 5, `${texts} texts, ${about}`);
  assert.ok(smallest >= 18 * letters - 0.1, `${smallest} px, ${about}`);
  const past = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  assert.equal(past, 0, about);
  assert.deepEqual(wrong, [], about);
}

test('a label pushed on to another and a line drawn through one are seen by the measure', async (t) => {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { page } = await atPlan(t, folder, { size: PHONE, letters: 1 });
  await drawing(page).waitFor();
  await drawing(page).evaluate((svg) => {
    const [first, second] = svg.querySelectorAll('text[font-weight="700"]');
    for (const name of ['x', 'y', 'transform']) {
      const at = first.getAttribute(name);
      if (at) second.setAttribute(name, at);
      else second.removeAttribute(name);
    }
    const third = [...svg.querySelectorAll('text')].at(-1);
    const { x, y, width, height } = third.getBBox();
    const line = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    line.setAttribute('d', `M${x} ${y}L${x + width} ${y + height}`);
    svg.append(line);
  });
  const { found } = await drawing(page).evaluate(meetings);
  assert.equal(found.filter((what) => / over /.test(what)).length, 1, found.join());
  assert.ok(
    found.some((what) => /on a line/.test(what)),
    found.join(),
  );
});

for (const { name, size, letters } of SCREENS) {
  test(`nothing on the plan of the pretend house meets anything else at ${name}`, async (t) => {
    const folder = newBook(t);
    await addPretendHouse(folder);
    const seen = await atPlan(t, folder, { size, letters });
    await isClear(seen, letters, name);
    await picture(seen.page, `plan-${size.width}-${letters}`);

    // What has no room finds more on a larger leaf, which alone is moved sideways.
    const { page, hand } = seen;
    const names = () => drawing(page).evaluate((svg) => svg.querySelectorAll('text').length);
    const before = await names();
    const wide = Number(await drawing(page).getAttribute('width'));
    await hand.tap('Zoom in');
    await page.waitForFunction(
      (wide) => Number(document.querySelector('main .drawn svg')?.getAttribute('width')) > wide,
      wide,
    );
    await isClear(seen, letters, `${name}, larger`);
    assert.ok((await names()) > before, `${await names()} names after ${before}`);
  });
}

test('edges are called in their list what they are called on the plan', async (t) => {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { page, wrong } = await atPlan(t, folder, { size: WIDE, letters: 1 });
  await drawing(page).waitFor();
  const edges = page.getByRole('list', { name: 'Edges' });
  const rows = await edges.getByRole('listitem').allInnerTexts();
  const drawn = await drawing(page)
    .locator('[data-edge]')
    .evaluateAll((all) => all.map((edge) => edge.dataset.edge));
  assert.ok(drawn.length > 20, drawn.join());
  for (const name of drawn) {
    const named = rows.filter((row) => row.split(/[\s,]+/).includes(name));
    assert.equal(named.length, 1, `${name} in ${named.length} rows`);
  }
  const faces = await page.getByRole('list', { name: 'Faces' }).innerText();
  const written = await drawing(page).locator('text[font-weight="700"]').allTextContents();
  const named = written.filter((words) => !/^f\d+$/.test(words));
  assert.ok(named.length > 3, written.join());
  for (const face of named) assert.ok(faces.includes(face), face);
  assert.deepEqual(wrong, []);
});

test('while the line is open the outline is sketched, and the plan comes when it closes', async (t) => {
  const { url } = await open(t, newBook(t));
  const seen = await screen(NARROW);
  const { page, hand, wrong } = seen;
  await page.goto(url);
  await hand.start('16 Pretend Lane');
  const legs = tHouse({ stem: 20, left: 18, bar: 24, right: 18, width: 24 });
  await hand.walk(legs.slice(0, 4));
  await page.getByRole('group', { name: 'Corner pad' }).waitFor();
  await toPlace(seen, 'Plan');
  await page.getByRole('img', { name: 'Sketch of the outline so far' }).waitFor();
  assert.equal(await drawing(page).count(), 0);
  await toPlace(seen, 'Field book');
  await hand.tap(legs[3].corner);
  for (const [i, { length, corner }] of legs.slice(4).entries()) {
    await hand.book(length);
    if (i < 3) await hand.tap(corner);
  }
  await toPlace(seen, 'Plan');
  await drawing(page).waitFor();
  assert.equal(await page.getByRole('img', { name: 'Sketch of the outline so far' }).count(), 0);
  await isClear(seen, 1, 'a T without a roof');
  await picture(page, 'plan-without-a-roof');
  assert.deepEqual(wrong, []);
});
