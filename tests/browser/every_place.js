// Every place of the page in its empty, working and error state, one after another.
import { readFileSync } from 'node:fs';
import { addPretendHouse, newBook, open } from './book.js';
import { drawn, screen } from './screen.js';
import { type } from './typing.js';

export const PLACES = [
  'Today',
  'Arrive',
  'Walk-round',
  'Field book',
  'Plan',
  'Leave-site check',
  'Takeoff',
  'Job file',
];

/**
 * Brings a page of `size` to each state of each place and calls `look({ page, place, state })`
 * there. The page has no camera and no compass, so that its refusals are to be seen. Gives what
 * went wrong in the page.
 */
export async function everyPlace(t, size, look) {
  const seen = await screen(size);
  await seen.context.addInitScript(() => {
    navigator.mediaDevices.getUserMedia = () =>
      Promise.reject(new DOMException('no', 'NotAllowedError'));
    DeviceOrientationEvent.requestPermission = async () => 'denied';
  });
  const at = async (place, state) => {
    await drawn(seen.page);
    await seen.page.evaluate(() => document.fonts.ready);
    await look({ page: seen.page, place, state });
  };
  await empty(t, seen, at);
  await working(t, seen, at);
  await wrong(t, seen, at);
  return seen.wrong;
}

async function goes({ page }, url, job, place) {
  await page.goto(`${url}/#${job}/${PLACES.indexOf(place)}`);
  await page.reload();
  await page.locator(`main[data-place="${place}"]`).waitFor();
  await page.locator('main :is(h1, h2, p):visible').first().waitFor();
}

async function empty(t, seen, at) {
  const { url, ask } = await open(t, newBook(t));
  await seen.page.goto(url);
  await seen.page.getByText('No stops. Start a job.').waitFor();
  await at('Today', 'empty');
  const { job } = await ask({ ask: 'start_job', address: '12 Pretend Lane' });
  for (const place of PLACES.slice(1)) {
    await goes(seen, url, job, place);
    if (place === 'Takeoff') await seen.page.getByText('Nothing to take off yet').waitFor();
    await at(place, 'empty');
  }
}

async function working(t, seen, at) {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { url, ask } = await open(t, folder);
  const { page } = seen;
  const { stops } = await ask({ ask: 'today' });
  const { job } = stops[0];
  for (const note of [
    { note: 'here', name: 'the owner', may_say_yes: true },
    { note: 'permission', what: 'climb', given: true, by: null },
    { note: 'hazard', what: 'ice', seen: true },
    { note: 'front', heading: 0 },
  ])
    await ask({ ask: 'visit', job, note });
  await photographed(url, job);
  await ask({ ask: 'make_packet', job, edition: 'owner' });
  await ask({ ask: 'send', job, packet: null, to: 'the owner, by mail', after: 0 });

  await page.goto(url);
  await page.getByRole('searchbox', { name: 'Search' }).fill('pipe');
  await page.getByRole('list', { name: 'Found' }).getByRole('listitem').first().waitFor();
  await at('Today', 'working');
  for (const place of PLACES.slice(1)) {
    await goes(seen, url, job, place);
    if (place === 'Plan') {
      await page.getByRole('button', { name: 'List', exact: true }).click();
      await page.locator('main li[data-thing="pipe 1"]').waitFor();
    }
    if (place === 'Takeoff') await page.locator('main li').first().waitFor();
    if (place === 'Job file')
      await page.getByRole('list', { name: 'Sent and waiting' }).getByRole('listitem').waitFor();
    await at(place, 'working');
  }
  await goes(seen, url, job, 'Plan');
  await page.getByRole('button', { name: 'List', exact: true }).click();
  await page.locator('main li[data-thing="face 1"] button').first().click();
  await page.getByRole('button', { name: 'Pitch', exact: true }).click();
  await page.getByRole('region', { name: 'Pitch', exact: true }).waitFor();
  await at('Plan', 'pitch');
}

// Photos of three sides, one of them said, two of them guessed by where the camera looked.
async function photographed(url, job) {
  const picture = readFileSync(new URL('../../assets/demo/tape-leg-2.jpg', import.meta.url));
  for (const [k, about] of [
    { place: 'front', distance: 'whole' },
    { heading: 92 },
    { heading: 136 },
  ].entries()) {
    const query = new URLSearchParams({ job, from: 'camera', ...about });
    const answer = await fetch(`${url}/photo?${query}`, {
      method: 'POST',
      body: Buffer.concat([picture, Buffer.from([k])]),
    });
    if (answer.status !== 200) throw new Error(`${answer.status}: ${await answer.text()}`);
  }
}

// Each place where something was refused, differs, or is not to be had.
async function wrong(t, seen, at) {
  const served = await open(t, newBook(t));
  const { url, ask } = served;
  const { page } = seen;
  const press = (name) => page.getByRole('button', { name, exact: true }).last().click();
  const says = (words) => page.getByRole('status').filter({ hasText: words }).waitFor();

  await page.goto(url);
  await press('Start a job');
  await press('Start');
  await says('Which address?');
  await at('Today', 'error');

  const { job } = await ask({ ask: 'start_job', address: '12 Pretend Lane' });
  // A rectangle with the digits of its third side swapped.
  for (const [k, length] of ['42 ft', '30 ft', '24 ft', '30 ft'].entries()) {
    await type(ask, job, k + 1, length);
    if (k < 3) await ask({ ask: 'corner', job, after_leg: k + 1, turn: { turn: 'outside' } });
  }

  await goes(seen, url, job, 'Arrive');
  await press('This is the front');
  await says('set sides by hand');
  await at('Arrive', 'error');

  await goes(seen, url, job, 'Walk-round');
  await press('Photo');
  await page.getByLabel('Add photos').waitFor();
  await at('Walk-round', 'error');

  await goes(seen, url, job, 'Field book');
  await page.locator('section[aria-label=Closure][data-state=gap]').waitFor();
  await at('Field book', 'gap');
  await press('Read');
  for (const key of ['9', 'ft', '1', '4']) await press(key);
  await says(/14/);
  await at('Field book', 'error');
  await press('Put keypad away');
  await page.getByRole('group', { name: 'Keypad' }).waitFor({ state: 'detached' });

  for (const place of ['Plan', 'Leave-site check', 'Takeoff']) {
    await goes(seen, url, job, place);
    if (place === 'Takeoff') await page.getByText('Nothing to take off yet').waitFor();
    await at(place, 'error');
  }

  await goes(seen, url, job, 'Job file');
  await press('Send');
  await says('There is no packet to send');
  await at('Job file', 'error');

  // Last, since nothing answers any more.
  await goes(seen, url, job, 'Field book');
  const before = seen.wrong.length;
  await served.kill();
  await press('Read');
  await page.getByRole('alert').filter({ hasText: 'does not answer' }).waitFor();
  await at('Frame', 'error');
  // The browser says by itself that nothing answers.
  seen.wrong.length = before;
}
