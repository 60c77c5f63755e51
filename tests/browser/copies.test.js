import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readdirSync, statSync } from 'node:fs';
import { join as path } from 'node:path';
import { farEnds, holds, hub, newBook, open, openShared } from './book.js';
import { picture, screen, toPlace } from './screen.js';
import { visit } from './whole_visit.js';

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
  await settings.getByText(/^Joined to the hub of /).waitFor();
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

// A finger that does a visit as it comes.
const finger = (hand) => ({
  act: () => {},
  press: (target) => hand.tap(target),
  write: (target, words) => target.fill(words),
  figures: async (pad, digits) => {
    for (const digit of digits)
      await hand.tap(pad.getByRole('button', { name: digit, exact: true }));
  },
});

// What the page said of copies, each time that it said something else, and what was refused.
async function listenTo({ page, context }) {
  const heard = { copies: [], refused: [] };
  await context.exposeFunction('copiesSaid', (words) => {
    if (words && heard.copies.at(-1) !== words) heard.copies.push(words);
  });
  await context.addInitScript(() => {
    const look = () => {
      const said = document.querySelector('[role=status][aria-label=Copies]');
      if (said) window.copiesSaid(said.innerText.trim());
    };
    new MutationObserver(look).observe(document, {
      subtree: true,
      childList: true,
      characterData: true,
    });
  });
  page.on('response', async (answer) => {
    if (!answer.url().endsWith('/command')) return;
    const told = await answer.json().catch(() => null);
    const refused = told?.reply === 'refused' ? told : told?.refused;
    if (refused) heard.refused.push(refused.en);
  });
  return heard;
}

// Bytes in a folder and all under it; what goes away meanwhile counts nothing.
function size(folder) {
  return readdirSync(folder, { withFileTypes: true }).reduce((sum, file) => {
    const at = path(folder, file.name);
    try {
      return sum + (file.isDirectory() ? size(at) : statSync(at).size);
    } catch {
      return sum;
    }
  }, 0);
}

async function until(holdsNow) {
  for (let look = 0; look < PATIENCE / 50; look += 1) {
    if (await holdsNow()) return true;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return false;
}

const PHOTOS = 16;

async function keepPhotos(url, job) {
  for (let number = 0; number < PHOTOS; number += 1) {
    const photo = new Uint8Array(3_000_000).fill(number);
    photo.set([0xff, 0xd8, 0xff, 0xe0]);
    const kept = await fetch(`${url}/photo?job=${job}&from=file`, { method: 'POST', body: photo });
    assert.equal((await kept.json()).reply, 'job');
  }
}

test('a whole job from a cold start without a network, then two who read one leg: nothing is lost, doubled or called sent', async (t) => {
  const [books, yardBook] = [[newBook(t), newBook(t)], newBook(t)];
  let first = await open(t, books[0]);
  const one = await screen();
  const heard = await listenTo(one);
  await one.page.goto(first.url);
  await visit(one.page, finger(one.hand));

  // Send, without a way to send: the file is handed to the person, and the packet waits.
  const sending = one.page.getByRole('list', { name: 'Sent and waiting' }).getByRole('listitem');
  await one.page.getByRole('textbox', { name: 'To' }).fill('the owner');
  await Promise.all([one.page.waitForEvent('download'), one.hand.tap('Send')]);
  await sending.getByText(/Waiting to send since/).waitFor();
  await says(one.page, ALONE);
  assert.deepEqual(farEnds(first.pid), [], 'the program asked another machine');

  // Killed and begun again, still without a network, all of it stands and still waits.
  await one.page.goto('about:blank');
  await first.kill();
  first = await open(t, books[0]);
  await one.page.goto(first.url);
  const { stops } = await first.ask({ ask: 'today' });
  const { job } = stops[0];
  await keepPhotos(first.url, job);
  await one.page.goto(`${first.url}/#${job}/7`);
  await one.page.reload();
  await sending.getByText(/Waiting to send since/).waitFor();
  await says(one.page, ALONE);
  assert.deepEqual(farEnds(first.pid), [], 'the program asked another machine');
  assert.deepEqual(new Set(heard.copies), new Set([ALONE]));
  assert.deepEqual(heard.refused, []);

  // A hub comes, and dies with some of the photos on its disk and some not.
  const yard = await hub(t, yardBook);
  const empty = size(yardBook);
  const joined = join(one.page, one.hand, await yard.link('A. Walker'));
  assert.ok(await until(() => size(yardBook) > empty + 7_000_000), 'no photo came to the hub');
  await yard.kill();
  await joined;
  await says(one.page, 'Waiting to send: ');
  await toPlace(one, 'Job file');
  await sending.getByText(/Waiting to send since/).waitFor();
  await picture(one.page, 'hub-killed-in-the-middle');
  await yard.start();
  await says(one.page, TWO);
  // A copy at the hub is no packet with its reader: that waits until a person says otherwise.
  await sending.getByText(/Waiting to send since/).waitFor();
  const numbers = heard.copies.flatMap((words) => /: (\d+), on this/.exec(words)?.[1] ?? []);
  assert.equal(heard.copies[0], ALONE);
  assert.equal(heard.copies.at(-1), TWO);
  assert.ok(
    numbers.length > 0 && heard.copies.slice(1, -1).every((words) => /^Waiting/.test(words)),
  );
  assert.ok(Number(numbers.at(-1)) > 0, numbers.join(' '));

  // Another device joins, and has the job with its photos.
  const second = await open(t, books[1]);
  const two = await screen();
  const heardToo = await listenTo(two);
  await two.page.goto(second.url);
  await two.hand.start('A job of its own');
  await join(two.page, two.hand, await yard.typed('B. Person'));
  const there = async () => (await second.ask({ ask: 'copies', job })).copies.en === TWO;
  assert.ok(await until(there), 'the job did not come whole');
  for (const [phone, { url }] of [
    [one, first],
    [two, second],
  ]) {
    await phone.page.goto(`${url}/#${job}/3`);
    await phone.page.reload();
    await phone.page.locator('li[data-thing="leg 1"]').waitFor();
    await says(phone.page, TWO);
  }

  // No network once more: both read leg 1, which had been 42 ft.
  await yard.kill();
  await readAgain(one.page, one.hand, '41 ft');
  await readAgain(two.page, two.hand, '43 ft');
  for (const { page } of [one, two]) await says(page, 'Waiting to send: 1');
  await yard.start();
  for (const { page } of [one, two]) await says(page, TWO);

  // Each value stands once on both, with the device that read it, and who.
  const called = [];
  for (const { ask } of [first, second]) called.push((await ask({ ask: 'copies', job })).called);
  assert.ok(called.every((name) => /^device [0-9a-f]{4}$/.test(name)) && called[0] !== called[1]);
  const item = (page, value) =>
    page.getByRole('region', { name: 'Story' }).locator(`li[data-value="${value}"]`);
  const whose = [
    { '41 ft': 'this phone', '43 ft': `${called[1]}, B. Person` },
    { '41 ft': `${called[0]}, A. Walker`, '43 ft': 'this phone' },
  ];
  for (const [i, { page, hand }] of [one, two].entries()) {
    await openLeg(page, hand);
    await hand.tap(page.getByRole('region', { name: 'Leg 1', exact: true }).getByText('Story'));
    for (const [value, name] of Object.entries(whose[i])) {
      await item(page, value).waitFor({ timeout: PATIENCE });
      assert.ok((await item(page, value).innerText()).includes(name), `${value}: ${name}`);
      assert.equal(await item(page, value).and(page.locator('[data-state=struck]')).count(), 0);
    }
    for (const value of ['42 ft', '41 ft', '43 ft'])
      assert.equal(await item(page, value).count(), 1, value);
  }
  await picture(two.page, 'whose-reading');

  // A person strikes one, the packet is handed on; the hub dies once more before it is told.
  await yard.kill();
  await one.hand.tap(item(one.page, '43 ft').getByRole('button', { name: 'Strike' }));
  await item(one.page, '43 ft').and(one.page.locator('[data-state=struck]')).waitFor();
  await toPlace(one, 'Job file');
  await one.hand.tap('Handed on');
  await sending.getByText(/Handed on \d/).waitFor();
  await says(one.page, 'Waiting to send: 2');
  await yard.start();
  await says(one.page, TWO);
  await item(two.page, '43 ft')
    .and(two.page.locator('[data-state=struck]'))
    .waitFor({ timeout: PATIENCE });
  for (const value of ['42 ft', '41 ft', '43 ft'])
    assert.equal(await item(two.page, value).count(), 1, value);
  const stage = async () =>
    (await second.ask({ ask: 'packets', job })).sends.map((send) => send.stage);
  assert.ok(await until(async () => (await stage())[0] === 'handed_on'));
  assert.equal((await stage()).length, 1);

  // After all the retries both books hold the same, nothing twice.
  const same = () => JSON.stringify(holds(t, books[0])) === JSON.stringify(holds(t, books[1]));
  assert.ok(await until(same), 'the two books differ');
  assert.equal(holds(t, books[0]).photos, PHOTOS + 1);
  assert.deepEqual([heard.refused, heardToo.refused], [[], []]);
  assert.ok(![...heard.copies, ...heardToo.copies].some((words) => /\bsent\b/i.test(words)));
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
    one.hand.tap(from.getByRole('button', { name: 'Save a copy of all jobs' })),
  ]);
  assert.match(file.suggestedFilename(), /^field-book-[\d-]{17}\.book$/);
  const saved = path(newBook(t), file.suggestedFilename());
  await file.saveAs(saved);
  await from.getByText(/holds 4 entries, 1 photo, 0 packets\. It is a second copy once/).waitFor();
  await from.getByText('Copies by file').evaluate((there) => there.scrollIntoView());
  await picture(one.page, 'copy-saved');

  const office = await open(t, newBook(t));
  const two = await screen({ width: 1280, height: 800 });
  await two.page.goto(office.url);
  await two.hand.start('A job of the office');
  const into = await settingsOf(two);
  const bring = async (which) => into.getByLabel('Add file').setInputFiles(which);
  await bring({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(photo) });
  await into
    .getByText(/^This file is no whole backup \(it does not begin as a backup does\)/)
    .waitFor();
  assert.equal((await office.ask({ ask: 'today' })).stops.length, 1);
  await bring(saved);
  await into.getByText('Brought in: 4 entries and 1 photo of 12 Pretend Lane.').waitFor();
  await into.getByText('Copies by file').evaluate((there) => there.scrollIntoView());
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
  const photo = settings.getByLabel('Take a photo of the code');
  const field = settings.getByRole('textbox', { name: /Link of a hub/ });
  assert.equal(await photo.getAttribute('capture'), 'environment');
  const blank = await one.page.screenshot({ clip: { x: 0, y: 0, width: 90, height: 60 } });
  await photo.setInputFiles({ name: 'no.png', mimeType: 'image/png', buffer: blank });
  await settings.getByText(/^No square is found on this photo\. .* type the line below/).waitFor();
  assert.equal(await field.inputValue(), '');
  await photo.setInputFiles({ name: 'it.png', mimeType: 'image/png', buffer: taken });
  await settings.getByText('The link is in the field. Check it, then tap Join.').waitFor();
  assert.equal(await field.inputValue(), link);
  await field.evaluate((there) => there.scrollIntoView());
  await picture(one.page, 'square-read');
  assert.equal((await phone.ask({ ask: 'copies', job: null })).hub, null);
  await one.hand.tap(settings.getByRole('button', { name: 'Join', exact: true }));
  await settings.getByText(/^Joined to the hub of /).waitFor();
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
