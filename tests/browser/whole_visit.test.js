// One whole visit, from the first street name to the packet, by keyboard alone and by the left thumb
// alone. What was done is kept as a list of acts.
import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { focusSeen } from './focus.js';
import { PHONE, screen } from './screen.js';

const OUT = new URL('../out/', import.meta.url).pathname;

/** The visit, told to whatever does it: `act` names what follows, `press` and `write` do it. */
async function visit(page, by) {
  const button = (name, within = page) => within.getByRole('button', { name, exact: true }).last();
  const says = (words) => page.getByRole('status').filter({ hasText: words }).waitFor();
  const at = (place) => page.locator(`main[data-place="${place}"]`).waitFor();
  const goes = async (place) => {
    by.act(`Go to ${place}`);
    await by.press(page.locator('nav button.fold'));
    await by.press(button(place, page.getByRole('navigation', { name: 'Places' })));
    await at(place);
  };

  by.act('Start a job');
  await by.press(button('Start a job'));
  await by.write(page.getByRole('textbox', { name: 'Address' }), '12 Pretend Lane');
  await by.press(button('Start'));
  await at('Field book');

  await goes('Arrive');
  by.act('Say where the front is, who is here and what they allow');
  await by.press(button('This is the front'));
  await says('The front is noted');
  await by.write(page.getByRole('textbox', { name: 'Name, or what they are' }), 'the owner');
  await by.press(button('Note'));
  await by.press(page.getByRole('checkbox', { name: 'Walk round' }));
  await page.getByText(/^the owner, \d/).waitFor();

  await goes('Walk-round');
  by.act('Take a photo of the front and say what it shows');
  await by.press(button('Photo'));
  const camera = page.getByRole('dialog', { name: 'Camera' });
  await camera.getByRole('button', { name: 'Shutter' }).waitFor();
  await by.press(button('Shutter', camera));
  await camera.getByText('Photo 1 is kept.').waitFor();
  await by.press(button('Done', camera));
  const photo = page.locator('main li[data-thing="photo 1"]');
  await by.press(button('Front', photo));
  await photo.and(page.locator('[data-state=confirmed]')).waitFor();

  by.act('Read four legs');
  await by.press(button('Read'));
  const pad = page.getByRole('group', { name: 'Keypad' });
  for (const [leg, feet] of ['42', '24', '42', '24'].entries()) {
    await pad.waitFor();
    await by.figures(pad, feet);
    await by.press(button('ft', pad));
    await by.press(button('Book it', pad));
    await by.press(button('Right', page.getByRole('region', { name: 'Read-back' })));
    if (leg < 3) await by.press(button('Outside corner'));
  }
  await page.locator('section[aria-label=Closure][data-state=closes]').waitFor();

  await goes('Plan');
  by.act('Read the pitch of a face by level and tape');
  await by.press(button('List'));
  await by.press(page.locator('main li[data-thing="face 1"] button').first());
  await by.press(button('Pitch'));
  const pitch = page.getByRole('region', { name: 'Pitch', exact: true });
  await by.press(button('Level and tape', pitch));
  for (let inch = 0; inch < 6; inch += 1) await by.press(button('One inch more', pitch));
  await by.press(button('Book it', pitch));
  await pitch.and(page.locator('[data-value="26.6°"]')).waitFor();

  await goes('Leave-site check');
  by.act('Note that nothing was promised, come back, leave');
  const promise = page.locator('main li[data-thing=promise]');
  while ((await promise.count()) === 0) await by.press(button('Next page'));
  await by.press(button('Go', promise));
  await by.press(button('Nothing promised'));
  await by.press(button('Back to check'));
  await by.press(button('Leave'));
  await says(/check complete/i);

  await goes('Job file');
  by.act('Make the packet');
  await by.press(button('Make packet'));
  await page
    .getByRole('list', { name: 'Packets' })
    .getByRole('listitem')
    .first()
    .waitFor({ timeout: 180_000 });
}

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
