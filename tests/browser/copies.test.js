import assert from 'node:assert/strict';
import { test } from 'node:test';
import { join as path } from 'node:path';
import { hub, newBook, open, openShared } from './book.js';
import { picture, screen, toPlace } from './screen.js';

const ALONE = '1 copy: this phone only';
const TWO = '2 copies: this phone, hub';
// A device that met a hub out of reach rests at most 15 seconds before it asks again.
const PATIENCE = 90_000;

async function join(page, hand, link) {
  await hand.tap(page.getByRole('navigation', { name: 'Places' }).getByRole('button').first());
  await hand.tap('Settings');
  const settings = page.getByRole('dialog', { name: 'Settings' });
  await settings.getByRole('textbox', { name: /Link of a hub/ }).fill(link);
  await hand.tap(settings.getByRole('button', { name: 'Join', exact: true }));
  await settings.getByText(/^In step with /).waitFor();
  await picture(page, 'joined');
  await hand.tap(settings.getByRole('button', { name: 'Close' }));
}

const says = (page, text) =>
  page
    .getByRole('status', { name: 'Copies' })
    .filter({ hasText: text })
    .waitFor({ timeout: PATIENCE });

async function readAgain(page, hand, length) {
  await openLeg(page, hand);
  const leaf = page.getByRole('region', { name: 'Leg 1', exact: true });
  await hand.tap(leaf.getByRole('button', { name: 'Read again', exact: true }));
  await page.getByRole('group', { name: 'Keypad' }).waitFor();
  await hand.book(length);
}

async function openLeg(page, hand) {
  await hand.tap(page.locator('li[data-thing="leg 1"] button').first());
}

test('two books, a hub killed in the middle, one leg read on both: both stand, one is struck', async (t) => {
  const yard = await hub(t, newBook(t));
  const first = await open(t, newBook(t));
  const one = await screen();
  await one.page.goto(first.url);
  await one.hand.start('12 Pretend Lane');
  await says(one.page, ALONE);
  await one.hand.tap('Read');
  await one.hand.book('40 ft');
  await one.hand.tap('Outside corner');
  await one.hand.tap('Put keypad away');
  await says(one.page, ALONE);

  await join(one.page, one.hand, await yard.link());
  await says(one.page, TWO);

  // The hub dies: what is booked then waits, and is not called a copy.
  await yard.kill();
  await readAgain(one.page, one.hand, '41 ft');
  await says(one.page, 'Waiting to send: 1, on this phone only');
  await picture(one.page, 'waiting-for-the-hub');
  await yard.start();
  await says(one.page, TWO);

  // A second phone joins by typing, and has the job.
  const second = await open(t, newBook(t));
  const two = await screen();
  await two.page.goto(second.url);
  await two.hand.start('A job of its own');
  await join(two.page, two.hand, await yard.typed());
  await says(two.page, TWO);
  await two.page.goto(second.url);
  await two.page
    .getByRole('list', { name: 'Stops' })
    .waitFor({ timeout: 2000 })
    .catch(() => {});
  const { stops } = await second.ask({ ask: 'today' });
  const job = stops.find((stop) => stop.address === '12 Pretend Lane').job;
  await two.page.goto(`${second.url}/#${job}/3`);
  await two.page.reload();
  await two.page.locator('li[data-thing="leg 1"]').waitFor();

  // No network: both read the leg.
  await yard.kill();
  await readAgain(one.page, one.hand, '42 ft');
  await readAgain(two.page, two.hand, '43 ft');
  await says(one.page, 'Waiting to send: 1');
  await says(two.page, 'Waiting to send: 1');
  await yard.start();
  await says(one.page, TWO);
  await says(two.page, TWO);

  // Both readings are on both, without anybody asking; a person strikes one.
  for (const { page, hand } of [one, two]) {
    await openLeg(page, hand);
    await hand.tap(page.getByRole('region', { name: 'Leg 1', exact: true }).getByText('Story'));
    const story = page.getByRole('region', { name: 'Story' });
    for (const value of ['40 ft', '41 ft', '42 ft', '43 ft']) {
      const item = story.locator(`li[data-value="${value}"]`);
      await item.waitFor({ timeout: PATIENCE });
      assert.equal(await item.count(), 1, value);
    }
  }
  await picture(one.page, 'both-readings');
  const struck = (page) =>
    page.getByRole('region', { name: 'Story' }).locator('li[data-value="43 ft"]');
  await one.hand.tap(struck(one.page).getByRole('button', { name: 'Strike' }));
  await struck(one.page).and(one.page.locator('[data-state="struck"]')).waitFor();
  await struck(two.page)
    .and(two.page.locator('[data-state="struck"]'))
    .waitFor({ timeout: PATIENCE });

  assert.deepEqual([one.wrong, two.wrong], [[], []]);
  assert.deepEqual([...one.hosts, ...two.hosts], ['127.0.0.1', '127.0.0.1']);
});

// Opens Settings and brings what is of copies there into sight.
async function settingsOf({ page, hand }) {
  await hand.unfold();
  await hand.tap(
    page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Settings' }),
  );
  return page.getByRole('dialog', { name: 'Settings' });
}

test('a copy saved on one device is carried by hand into a book that is open, and the page shows what came', async (t) => {
  const phone = await open(t, newBook(t));
  const one = await screen();
  await one.page.goto(phone.url);
  await one.hand.start('12 Pretend Lane');
  await one.hand.tap('Read');
  await one.hand.book('40 ft');
  await one.hand.tap('Outside corner');
  await one.hand.tap('Put keypad away');
  const { stops } = await phone.ask({ ask: 'today' });
  const photo = new Uint8Array(6_000_000).fill(9);
  photo.set([0xff, 0xd8, 0xff, 0xe0]);
  await fetch(`${phone.url}/photo?job=${stops[0].job}&from=file`, { method: 'POST', body: photo });
  const from = await settingsOf(one);
  const [file] = await Promise.all([
    one.page.waitForEvent('download'),
    one.hand.tap(from.getByRole('button', { name: 'Save a copy of this book' })),
  ]);
  assert.match(file.suggestedFilename(), /^field-book-[\d-]{17}\.book$/);
  const saved = path(newBook(t), file.suggestedFilename());
  await file.saveAs(saved);
  await from.getByText(/holds 4 entries, 1 photo, 0 packets\. It is a second copy once/).waitFor();
  await from.getByText('Carried by hand').evaluate((there) => there.scrollIntoView());
  await picture(one.page, 'copy-saved');

  const office = await open(t, newBook(t));
  const two = await screen({ width: 1280, height: 800 });
  await two.page.goto(office.url);
  await two.hand.start('A job of the office');
  const into = await settingsOf(two);
  const bring = async (which) => into.getByLabel('Bring in a file').setInputFiles(which);
  await bring({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(photo) });
  await into
    .getByText(/^This file is no whole backup \(it does not begin as a backup does\)/)
    .waitFor();
  assert.equal((await office.ask({ ask: 'today' })).stops.length, 1);
  await bring(saved);
  await into.getByText('Brought in: 4 entries and 1 photo of 12 Pretend Lane.').waitFor();
  await into.getByText('Carried by hand').evaluate((there) => there.scrollIntoView());
  await picture(two.page, 'brought-in');
  await bring(saved);
  await into
    .getByText('Nothing new: 4 entries and 1 photo of 12 Pretend Lane were here already.')
    .waitFor();
  await two.hand.tap(into.getByRole('button', { name: 'Close' }));
  await toPlace(two, 'Today');
  await two.hand.tap(two.page.getByRole('button', { name: /12 Pretend Lane/ }).first());
  await two.page.locator('li[data-thing="leg 1"][data-value="40 ft"]').waitFor();
  assert.deepEqual([one.wrong, two.wrong], [[], []]);
});

test('a photo of the square puts its link into the field, and only Join joins', async (t) => {
  const laptop = await openShared(t, newBook(t));
  const wide = await screen({ width: 1280, height: 800 });
  await wide.page.goto(laptop.url);
  await wide.hand.start('12 Pretend Lane');
  const shown = await settingsOf(wide);
  await wide.hand.tap(shown.getByRole('button', { name: 'Let one more device join' }));
  const square = shown.getByRole('img', { name: 'The link as a QR code' });
  await square.evaluate((code) => code.scrollIntoView());
  const taken = await square.screenshot();
  const link = await shown.locator('p.link').innerText();

  const phone = await open(t, newBook(t));
  const one = await screen();
  await one.page.goto(phone.url);
  await one.hand.start('A job of the phone');
  const settings = await settingsOf(one);
  const photo = settings.getByLabel('Take a photo of the square');
  const field = settings.getByRole('textbox', { name: /Link of a hub/ });
  assert.equal(await photo.getAttribute('capture'), 'environment');
  const blank = await one.page.screenshot({ clip: { x: 0, y: 0, width: 90, height: 60 } });
  await photo.setInputFiles({ name: 'no.png', mimeType: 'image/png', buffer: blank });
  await settings.getByText(/^No square is found on this photo\. .* type the line below/).waitFor();
  assert.equal(await field.inputValue(), '');
  await photo.setInputFiles({ name: 'it.png', mimeType: 'image/png', buffer: taken });
  await settings.getByText('The link is in the field. Look at it, then Join.').waitFor();
  assert.equal(await field.inputValue(), link);
  await field.evaluate((there) => there.scrollIntoView());
  await picture(one.page, 'square-read');
  assert.equal((await phone.ask({ ask: 'copies', job: null })).hub, null);
  await one.hand.tap(settings.getByRole('button', { name: 'Join', exact: true }));
  await settings.getByText(/^In step with /).waitFor();
  assert.deepEqual(one.wrong, []);
});

test('a link that is none is refused in words, and nothing is joined', async (t) => {
  const { url, ask } = await open(t, newBook(t));
  const { page, hand } = await screen();
  await page.goto(url);
  await hand.start('12 Pretend Lane');
  const said = await ask({ ask: 'join', link: 'laptop' });
  assert.equal(said.reply, 'refused');
  assert.match(said.en, /^This is no link of a hub/);
  await says(page, ALONE);
});

test('a laptop shares its book: its code is shown, and a phone that joins has the photos', async (t) => {
  const laptop = await openShared(t, newBook(t));
  const wide = await screen({ width: 1280, height: 800 });
  await wide.page.goto(laptop.url);
  await wide.hand.start('12 Pretend Lane');
  const { job } = await laptop.ask({ ask: 'today' }).then(({ stops }) => stops[0]);
  const photo = new Uint8Array(3_000_000).fill(7);
  photo.set([0xff, 0xd8, 0xff, 0xe0]);
  const kept = await fetch(`${laptop.url}/photo?job=${job}&from=file`, {
    method: 'POST',
    body: photo,
    headers: { 'content-type': 'image/jpeg' },
  });
  assert.equal(kept.status, 200, await kept.text());
  await wide.hand.tap('Settings');
  await wide.hand.tap('Let one more device join');
  await wide.page.getByRole('img', { name: 'The link as a QR code' }).waitFor();
  await wide.page
    .getByRole('img', { name: 'The link as a QR code' })
    .evaluate((code) => code.scrollIntoView());
  await picture(wide.page, 'shared');
  const typed = await wide.page.locator('p.typed').innerText();

  const phone = await open(t, newBook(t));
  const { page, hand } = await screen();
  await page.goto(phone.url);
  await hand.start('A job of the phone');
  await join(page, hand, typed);
  await says(page, TWO);
  // On the laptop its own hub is no second copy.
  const { copies } = await laptop.ask({ ask: 'copies', job });
  assert.equal(copies.en, ALONE);
  const there = async () => (await phone.ask({ ask: 'copies', job })).copies.en;
  for (let look = 0; (await there()) !== TWO && look < 600; look += 1)
    await new Promise((resolve) => setTimeout(resolve, 100));
  assert.equal(await there(), TWO);
  const { stops } = await laptop.ask({ ask: 'today' });
  assert.ok(stops.some((stop) => stop.address === 'A job of the phone'));
});
