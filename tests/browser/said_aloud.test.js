// What nobody types on a ladder: said aloud, kept as it sounds, typed on the ground.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { PHONE, picture, screen } from './screen.js';

async function inFieldBook(t, before = () => {}) {
  const served = await open(t, newBook(t));
  const seen = await screen(PHONE);
  await seen.context.grantPermissions(['microphone']);
  await seen.page.addInitScript(before);
  await seen.page.goto(served.url);
  await seen.hand.start('12 Pretend Lane');
  const { stops } = await served.ask({ ask: 'today' });
  const look = () => served.ask({ ask: 'job', job: stops[0].job });
  return { ...seen, ...served, look };
}

test('what is said is on the disk, can be heard, and waits until it is typed', async (t) => {
  const { page, hand, look, url, wrong } = await inFieldBook(t);
  await hand.tap('Record it');
  await page.getByRole('status').filter({ hasText: 'Recording.' }).waitFor();
  await hand.tap('Stop');
  const waits = page.getByRole('list', { name: 'Recorded, not typed yet' }).getByRole('listitem');
  await waits.waitFor();
  await picture(page, 'said-and-waiting');
  const [clip] = (await look()).clips;
  const answer = await fetch(`${url}/photo/${clip.sha256}`);
  assert.equal(answer.headers.get('content-type'), 'audio/webm');
  assert.ok((await answer.arrayBuffer()).byteLength > 100);
  // The page itself can play it.
  await waits.locator('audio').evaluate(async (sound) => {
    sound.load();
    if (sound.readyState < 1)
      await new Promise((resolve, reject) => {
        sound.onloadedmetadata = resolve;
        sound.onerror = () => reject(new Error('it cannot be played'));
      });
  });

  await page.reload();
  await waits.waitFor();
  await hand.tap('Type it');
  await page.getByRole('group', { name: 'Keypad' }).waitFor();
  await hand.book('12 ft');
  await hand.tap('Typed');
  await waits.waitFor({ state: 'detached' });
  assert.deepEqual((await look()).clips, []);
  await hand.tap('Undo');
  await waits.waitFor();
  assert.deepEqual(wrong, []);
});

test('without a microphone it is said in words and nothing is booked', async (t) => {
  const { page, hand, look } = await inFieldBook(t, () => {
    navigator.mediaDevices.getUserMedia = async () => {
      throw new DOMException('denied', 'NotAllowedError');
    };
  });
  await hand.tap('Record it');
  await page.getByRole('status').filter({ hasText: 'may not use a microphone' }).waitFor();
  assert.deepEqual((await look()).clips, []);
});
