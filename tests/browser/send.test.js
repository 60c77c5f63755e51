// A packet on its way: to whom and what became of it, never called sent before it is.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { newBook, open, PROGRAM } from './book.js';
import { NARROW, PHONE, picture, screen } from './screen.js';

// Setting papers takes a debug build several seconds.
const SETTING = { timeout: 120_000 };

async function withPacket(t, size = PHONE, before = () => {}) {
  const folder = newBook(t);
  const served = await open(t, folder);
  const seen = await screen(size);
  const { page, hand } = seen;
  await page.addInitScript(before);
  await page.goto(served.url);
  await hand.start('12 Pretend Lane');
  const { stops } = await served.ask({ ask: 'today' });
  const { job } = stops[0];
  await served.ask({ ask: 'make_packet', job, edition: 'owner' });
  await toJobFile(seen);
  const waits = () => served.ask({ ask: 'packets', job });
  return { ...seen, ...served, job, waits };
}

async function toJobFile({ page, hand }) {
  const nav = page.getByRole('navigation', { name: 'Places' });
  await hand.unfold();
  await hand.tap(nav.getByRole('button', { name: 'Job file', exact: true }));
  await page.getByRole('list', { name: 'Packets' }).getByRole('listitem').waitFor(SETTING);
}

const row = (page) => page.getByRole('list', { name: 'Sent and waiting' }).getByRole('listitem');

test('without a way of sharing the packet is saved and waits until somebody says it was handed on', async (t) => {
  const { page, hand, waits, url, wrong } = await withPacket(t);
  await page.getByText('Nothing sent yet.').waitFor();
  await hand.tap('Send');
  await page.getByRole('status').filter({ hasText: 'To whom?' }).waitFor();
  assert.deepEqual((await waits()).sends, []);

  await page.getByRole('textbox', { name: 'To' }).fill('the owner, by mail');
  const [file] = await Promise.all([page.waitForEvent('download'), hand.tap('Send')]);
  const kept = mkdtempSync(join(tmpdir(), 'eavebook-sent-'));
  t.after(() => rmSync(kept, { recursive: true, force: true }));
  const saved = join(kept, file.suggestedFilename());
  await file.saveAs(saved);
  assert.match(
    execFileSync(PROGRAM, ['packet', '--check', saved], { encoding: 'utf8' }),
    /edition owner/,
  );

  await row(page).getByText('the owner, by mail').waitFor();
  await row(page)
    .getByText(/Waiting to send since/)
    .waitFor();
  await page.getByText('Waiting to send: 1').waitFor();
  const [waiting] = (await waits()).sends;
  assert.deepEqual([waiting.to, waiting.stage], ['the owner, by mail', 'waiting']);
  await picture(page, 'send-waiting');

  // After a kill of the page it waits still, and the same packet is no new version.
  await page.goto(url);
  await page.reload();
  await page.getByRole('list', { name: 'Stops' }).getByRole('button').first().waitFor();
  assert.equal((await waits()).packets.length, 1);
  await hand.openFirstStop();
  await toJobFile({ page, hand });
  await hand.tap('Handed on');
  await row(page)
    .getByText(/Handed on \d/)
    .waitFor();
  await page.getByText('Nothing waits. Handed on: 1.').waitFor();
  assert.equal((await waits()).sends[0].stage, 'handed_on');
  assert.deepEqual(wrong, []);
});

test('what is not to go after all is taken back by one tap and stays readable', async (t) => {
  const { page, hand, waits } = await withPacket(t, NARROW);
  await page.getByRole('textbox', { name: 'To' }).fill('nobody');
  await Promise.all([page.waitForEvent('download'), hand.tap('Send')]);
  await hand.tap('Do not send');
  await row(page)
    .getByText(/Not sent: taken back/)
    .waitFor();
  await page.getByText('Nothing sent yet.').waitFor();
  assert.deepEqual(
    (await waits()).sends.map(({ to, stage }) => [to, stage]),
    [['nobody', 'not_sent']],
  );
});

test("the device's own way of sharing takes the file, and closing it leaves the packet waiting", async (t) => {
  // This browser has none: what a phone would do with the file is told to the page.
  const shares = () => {
    window.shared = [];
    window.taken = false;
    navigator.canShare = ({ files }) => files.length === 1;
    navigator.share = async ({ files: [file] }) => {
      window.shared.push([file.name, file.size, file.type]);
      if (!window.taken) throw new DOMException('closed', 'AbortError');
    };
  };
  const { page, hand, waits } = await withPacket(t, PHONE, shares);
  await page.getByRole('textbox', { name: 'To' }).fill('the owner');
  await hand.tap('Send');
  await page.getByRole('status').filter({ hasText: 'Nothing was sent.' }).waitFor();
  assert.equal((await waits()).sends[0].stage, 'waiting');
  await page.evaluate(() => (window.taken = true));
  await hand.tap('Pass on');
  await row(page)
    .getByText(/Whether it came is not known/)
    .waitFor();
  assert.equal((await waits()).sends[0].stage, 'shared');
  const shared = await page.evaluate(() => window.shared);
  assert.equal(shared.length, 2);
  assert.match(shared[1].join(' '), /owner.*\.zip \d{4,} application\/zip/);
});
