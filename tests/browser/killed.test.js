import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { draws } from './draws.js';
import { HANDS, screenFor, tell } from './hands.js';
import { picture } from './screen.js';

/** Kills on the first screen, and on each other. */
const KILLS = [100, 20];

// The next key of a walk in steps, which never closes, by what the page shows.
function next({ slots, active, corner, booked }, draw) {
  if (corner) return Object.keys(booked).length % 2 ? 'Outside corner' : 'Inside corner';
  const [feet] = slots;
  if (active === 0) return feet.length < 2 ? String(1 + draw(9)) : 'ft';
  return slots[active] ? 'Book it' : String(draw(10));
}

// What the page shows at one moment: what is booked, and the slots.
const drawn = (page) =>
  page.evaluate(() => ({
    booked: Object.fromEntries(
      [...document.querySelectorAll('ul[aria-label=Readings] > li[data-value]')].map((item) => [
        item.dataset.thing,
        item.dataset.value,
      ]),
    ),
    title: document.querySelector('main h1')?.textContent ?? null,
    slots: [...document.querySelectorAll('[data-slot] .typed')].map((slot) => slot.textContent),
    active: [...document.querySelectorAll('[data-slot]')].findIndex((slot) => slot.ariaCurrent),
    corner: !!document.querySelector('[aria-label="Corner pad"]'),
    here: document.querySelector('[aria-label="You were here"]')?.textContent ?? '',
  }));

// The slots found again hold every key drawn before the kill; the key that was on its way when
// the program died may be there too.
function holdsAll(before, after) {
  const [was, is] = [before.slots.join('|'), after.slots.join('|')];
  if (before.slots.length === 0) return true;
  if (after.slots.length === 0)
    return Object.keys(after.booked).length > Object.keys(before.booked).length;
  return (
    before.slots.every((slot, i) => after.slots[i].startsWith(slot)) && is.length <= was.length + 1
  );
}

for (const [place, kind] of HANDS.entries()) {
  const kills = KILLS[Math.min(place, 1)];
  test(`killed ${kills} times while booking, no drawn key is lost: ${kind.name}`, (t) =>
    killed(t, kind, kills, 20261 + place));
}

async function killed(t, kind, kills, seed) {
  const folder = newBook(t);
  let served = await open(t, folder);
  const { page, hand } = await screenFor(kind, served.ask);
  await page.goto(served.url);
  await hand.start('12 Pretend Lane');
  await openPad(page, hand);

  const draw = draws(seed);
  let pressed = 0;
  let onItsWay = 0;
  for (let kill = 1; kill <= kills; kill += 1) {
    // Some keys land, and one is on its way as the program dies.
    for (let more = 1 + draw(8); more > 0; more -= 1) {
      const shown = await drawn(page);
      await hand.tap(next(shown, draw));
      await changed(page, shown);
      pressed += 1;
    }
    const key = hand.button(next(await drawn(page), draw)).last();
    await key.scrollIntoViewIfNeeded();
    const last = await key.boundingBox();
    const wait = draw(12);
    const tapped = page.touchscreen.tap(last.x + last.width / 2, last.y + last.height / 2);
    await new Promise((resolve) => setTimeout(resolve, wait));
    await Promise.all([served.kill(), tapped]);
    const before = await drawn(page);

    served = await open(t, folder);
    await page.goto(served.url);
    await page.locator('main[data-place="Field book"]').waitFor();
    const after = await drawn(page);
    for (const [thing, value] of Object.entries(before.booked)) {
      assert.equal(after.booked[thing], value, `kill ${kill}: ${thing} is lost`);
    }
    assert.ok(holdsAll(before, after), `kill ${kill}: ${JSON.stringify([before, after])}`);
    assert.ok(after.slots.length > 0 || after.corner, `kill ${kill}: reopens where it was`);
    if (Object.keys(after.booked).length > 0) assert.match(after.here, /leg \d+/i, `kill ${kill}`);
    if (JSON.stringify(after) !== JSON.stringify(before)) onItsWay += 1;

    if (kill % 20 === 0) {
      await picture(page, 'after-kills');
      await startAnother(page, hand, kill);
    }
  }
  tell(
    t,
    'killed while booking',
    kind.name,
    `${kills} kills, ${pressed} keys drawn, 0 lost (at most 0), reopened on the same slots ${kills} times; ${onItsWay} times the key on its way was kept though never drawn`,
  );
}

async function changed(page, shown) {
  for (let tries = 0; tries < 6000; tries += 1) {
    if (JSON.stringify(await drawn(page)) !== JSON.stringify(shown)) return;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  assert.fail(`a key changed nothing: ${JSON.stringify(shown)}`);
}

// A house of its own, so that no walk grows longer than any roof has legs.
async function startAnother(page, hand, number) {
  const away = hand.button('Put keypad away');
  if (await away.count()) {
    await hand.tap(away);
    await page.getByRole('group', { name: 'Keypad' }).waitFor({ state: 'detached' });
  }
  await hand.tap(page.locator('nav button').first());
  await hand.tap(
    page
      .getByRole('navigation', { name: 'Places' })
      .getByRole('button', { name: 'Today', exact: true }),
  );
  await hand.start(`${number} Pretend Lane`);
  await openPad(page, hand);
}

// The walk is led by what is drawn: before the keypad is there, no key is the next.
async function openPad(page, hand) {
  await hand.tap('Read');
  await page.getByRole('group', { name: 'Keypad' }).waitFor();
}
