// One whole visit, from the first street name to the packet, by keyboard alone and by the left thumb
// alone. What was done is kept as a list of acts.
import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { focusSeen } from './focus.js';
import { PHONE, screen } from './screen.js';
import { visit } from './whole_visit.js';

const OUT = new URL('../out/', import.meta.url).pathname;

/** Acts and how often each took a key or a tap. */
class Acts {
  acts = [];

  act(name) {
    this.acts.push({ name, count: 0, steps: [] });
  }

  step(words, count) {
    const last = this.acts.at(-1);
    last.count += count;
    last.steps.push(words);
  }

  total() {
    return this.acts.reduce((sum, { count }) => sum + count, 0);
  }

  keep(t, name, unit) {
    const lines = this.acts.map(
      ({ name, count, steps }) => `${name}: ${count} ${unit}: ${steps.join(', ')}`,
    );
    mkdirSync(OUT, { recursive: true });
    writeFileSync(`${OUT}${name}.txt`, `${lines.join('\n')}\n`);
    for (const line of lines) t.diagnostic(line);
    t.diagnostic(`${this.total()} ${unit} in ${this.acts.length} acts`);
  }
}

const nameOf = (target) =>
  target.evaluate((control) =>
    (control.ariaLabel ?? (control.innerText || control.labels?.[0]?.innerText) ?? '').trim(),
  );

/** Keys alone: the tabulator until the thing has the focus, which must be seen, then the key. */
class Keys extends Acts {
  constructor(page) {
    super();
    this.page = page;
  }

  async reach(target) {
    await target.waitFor();
    for (let tabs = 0; tabs < 200; tabs += 1) {
      if (await target.evaluate((control) => control === document.activeElement)) {
        assert.equal(await target.evaluate(focusSeen), '', await nameOf(target));
        return tabs;
      }
      await this.page.keyboard.press('Tab');
    }
    return assert.fail(`${await nameOf(target)} is never reached`);
  }

  async press(target) {
    const tabs = await this.reach(target);
    const box = await target.evaluate((control) => control.matches('[type=checkbox]'));
    this.step(await nameOf(target), tabs + 1);
    await this.page.keyboard.press(box ? 'Space' : 'Enter');
  }

  async write(target, words) {
    const tabs = await this.reach(target);
    this.step(`“${words}”`, tabs + words.length);
    await this.page.keyboard.type(words);
  }

  async figures(_pad, digits) {
    this.step(digits, digits.length);
    for (const digit of digits) await this.page.keyboard.press(digit);
  }
}

/** Taps of one thumb: each tap, and whether the thumb had to scroll or reach for it. */
class Thumb extends Acts {
  far = [];
  scrolled = [];

  constructor(page, hand) {
    super();
    this.page = page;
    this.hand = hand;
  }

  async press(target) {
    const before = this.hand.scrolls;
    await target.waitFor();
    const name = await nameOf(target);
    const { y, height } = await target.boundingBox();
    await this.hand.tap(target);
    const scrolled = this.hand.scrolls > before;
    if (scrolled) this.scrolled.push(name);
    // Neither in the upper third nor in the last 24 px, where the thumb of a held phone is not.
    else if (y + height < PHONE.height / 3 || y > PHONE.height - 24) this.far.push(name);
    this.step(name, 1);
  }

  async write(target, words) {
    await this.press(target);
    await target.fill(words);
  }

  async figures(pad, digits) {
    for (const digit of digits)
      await this.press(pad.getByRole('button', { name: digit, exact: true }));
  }
}

async function begins(t, size, mirror) {
  const { url, ask } = await open(t, newBook(t));
  await ask({ ask: 'set', setting: { set: 'mirror_hand', to: mirror } });
  const seen = await screen(size);
  await seen.page.goto(url);
  return seen;
}

test('a whole visit is made with the keyboard alone, and the focus is always seen', async (t) => {
  const { page, wrong } = await begins(t, PHONE, false);
  const keys = new Keys(page);
  await visit(page, keys);
  keys.keep(t, 'visit-by-keyboard', 'keys');
  assert.deepEqual(wrong, []);
});

test('a whole visit is made with the left thumb alone', async (t) => {
  const { page, hand, wrong } = await begins(t, PHONE, true);
  const thumb = new Thumb(page, hand);
  await visit(page, thumb);
  thumb.keep(t, 'visit-by-left-thumb', 'taps');
  t.diagnostic(
    `${thumb.far.length} taps out of the thumb's band: ${thumb.far.join(', ') || 'none'}; ${thumb.scrolled.length} came after a scroll: ${thumb.scrolled.join(', ') || 'none'}`,
  );
  assert.deepEqual(wrong, []);
});
