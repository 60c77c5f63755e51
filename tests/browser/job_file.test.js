import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { addPretendHouse, newBook, open, PROGRAM } from './book.js';
import { NARROW, PHONE, picture, screen, toPlace, WIDE } from './screen.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
// Setting the papers takes seconds, more beside other tests.
const SETTING = { timeout: 120_000 };

/** The pretend house, opened at Job file. */
async function jobFile(t, size) {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const served = await open(t, folder);
  const seen = await screen(size);
  await seen.page.goto(served.url);
  await seen.hand.openFirstStop();
  await toPlace(seen, 'Job file');
  await seen.page.locator('main[data-place="Job file"] fieldset').waitFor();
  return { ...seen, ...served, folder };
}

const rows = (page) => page.getByRole('list', { name: 'Packets' }).locator(':scope > li');

/** Taps `Make packet`, and gives what the list says then, the newest first. */
async function make({ page, hand }) {
  await hand.tap('Make packet');
  const said = page
    .getByRole('status')
    .filter({ hasText: /is made and kept here|Nothing was recorded since/ });
  await said.waitFor(SETTING);
  return rows(page).evaluateAll((items) =>
    items.map((item) => item.querySelector('button').innerText.split('\n')),
  );
}

/** Saves the open packet as a person does; the path of the file. */
async function save(t, page) {
  const folder = mkdtempSync(join(tmpdir(), 'eavebook-saved-'));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Save', exact: true }).click(),
  ]);
  const file = join(folder, download.suggestedFilename());
  await download.saveAs(file);
  return { file, folder };
}

const judged = async (page) => {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() =>
    window.axe.run({ rules: { 'color-contrast-enhanced': { enabled: true } } }),
  );
  return violations
    .filter(({ impact }) => ['serious', 'critical'].includes(impact))
    .map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]);
};

for (const [name, size] of Object.entries({ phone: PHONE, wide: WIDE })) {
  test(`the owner's packet is made, looked at, saved and proved, ${name}`, async (t) => {
    const seen = await jobFile(t, size);
    const { page } = seen;
    assert.equal(await page.getByRole('radio', { checked: true }).getAttribute('value'), 'owner');
    await picture(page, `job-file-${name}-before`);
    assert.deepEqual(await judged(page), []);

    const [row] = await make(seen);
    assert.match(row.join(' '), /^Owner, version 1 .* \d+ open/);
    await picture(page, `job-file-${name}-made`);
    assert.deepEqual(await judged(page), []);
    await page.screenshot({
      path: new URL(`../out/job-file-${name}-whole.png`, import.meta.url).pathname,
      fullPage: true,
    });

    // What is counted as open stands there in words.
    const open = Number(/(\d+) open/.exec(row.join(' '))[1]);
    const notKnown = page.getByRole('list', { name: 'Not known in it' }).getByRole('listitem');
    assert.equal(await notKnown.count(), open);

    const papers = page.getByRole('list', { name: 'Papers', exact: true }).getByRole('link');
    const [first] = await Promise.all([
      page.context().waitForEvent('page'),
      papers.first().click(),
    ]);
    await first.waitForLoadState().catch(() => {});
    await first.screenshot({
      path: new URL(`../out/job-file-${name}-paper.png`, import.meta.url).pathname,
    });
    await first.close();
    const kinds = {};
    for (const link of await page
      .getByRole('region', { name: / Contents$/ })
      .getByRole('link')
      .all()) {
      const address = new URL(await link.getAttribute('href'), seen.url);
      const answer = await fetch(address);
      assert.equal(answer.status, 200, address.pathname);
      assert.equal(answer.headers.get('x-content-type-options'), 'nosniff');
      const type = answer.headers.get('content-type');
      const begins = Buffer.from(await answer.arrayBuffer())
        .subarray(0, 4)
        .toString('latin1');
      if (address.pathname.endsWith('.pdf'))
        assert.deepEqual([type, begins], ['application/pdf', '%PDF']);
      kinds[type] = (kinds[type] ?? 0) + 1;
    }
    assert.ok(kinds['application/pdf'] >= 3, JSON.stringify(kinds));

    const { file, folder } = await save(t, page);
    const proved = execFileSync(PROGRAM, ['packet', '--check', file], { encoding: 'utf8' });
    assert.match(
      proved,
      /^whole and as it was made: packet [0-9a-f]{64} .*edition owner, version 1/,
    );
    execFileSync('unzip', ['-q', file, '-d', folder]);
    const [bag] = readdirSync(folder).filter((entry) => !entry.endsWith('.zip'));
    const sums = execFileSync('sha256sum', ['-c', 'manifest-sha256.txt'], {
      cwd: join(folder, bag),
      encoding: 'utf8',
    });
    const lines = sums.trim().split('\n');
    assert.ok(lines.length > 10 && lines.every((line) => line.endsWith(': OK')), sums);
    assert.deepEqual([...seen.hosts], ['127.0.0.1']);
    assert.deepEqual(seen.wrong, []);
    t.diagnostic(
      `${lines.length} files proved by sha256sum; ${open} open; ${JSON.stringify(kinds)}`,
    );
  });
}

test('made again it is the same file; after a reading it is version 2 and names the one before', async (t) => {
  const seen = await jobFile(t, PHONE);
  const { page, hand } = seen;
  await make(seen);
  const first = await save(t, page);
  await hand.tap(page.getByRole('radio', { name: /^Owner/ }));
  assert.equal((await make(seen)).length, 1);
  const again = await save(t, page);
  assert.ok(readFileSync(again.file).equals(readFileSync(first.file)), 'the same bytes');

  await hand.tap('Read');
  await page.getByRole('group', { name: 'Keypad' }).waitFor();
  await hand.book('20 ft 1');
  await toPlace(seen, 'Job file');
  await rows(page).first().waitFor();
  const told = await make(seen);
  assert.deepEqual(
    told.map(([title]) => title),
    ['Owner, version 2', 'Owner, version 1'],
  );
  assert.match(
    await page.getByRole('region', { name: /version 2 Contents/ }).innerText(),
    /Follows version 1/,
  );
  const { file, folder } = await save(t, page);
  execFileSync('unzip', ['-q', file, '-d', folder]);
  const [bag] = readdirSync(folder).filter((entry) => !entry.endsWith('.zip'));
  const list = JSON.parse(readFileSync(join(folder, bag, 'data/packet.json'), 'utf8'));
  assert.equal(list.version, 2);
  assert.ok(
    first.file.endsWith(`-v1-owner-${list.before.slice(0, 12)}.zip`),
    `${first.file} ${list.before}`,
  );
});

test('a reader chosen first gets the packet, and keys are taken while the papers are set', async (t) => {
  const seen = await jobFile(t, PHONE);
  const { page, hand } = seen;
  await hand.tap(page.getByRole('radio', { name: /^Firm/ }));
  await hand.tap('Make packet');
  await hand.tap('Read');
  const pad = page.getByRole('group', { name: 'Keypad' });
  await pad.waitFor();
  await hand.tap(pad.getByRole('button', { name: '4', exact: true }));
  await page.locator('[data-slot=ft] .typed', { hasText: '4' }).waitFor();
  await hand.tap('Put keypad away');
  await toPlace(seen, 'Job file');
  await rows(page).filter({ hasText: 'Firm, version 1' }).waitFor(SETTING);
  assert.match(await page.locator('main').innerText(), /Nothing sent yet\./);
  assert.deepEqual(seen.wrong, []);
});

test('papers are for this page alone', async (t) => {
  const { url, ask } = await jobFile(t, PHONE);
  const { stops } = await ask({ ask: 'today' });
  const { packets } = await ask({ ask: 'make_packet', job: stops[0].job, edition: 'crew' });
  const [{ packet, papers }] = packets;
  const path = papers.find(({ title }) => title === 'Papers').papers[0].path;
  const answer = await fetch(`${url}/packet/${packet}/${path}`);
  assert.equal(answer.status, 200);
  assert.match(answer.headers.get('content-security-policy'), /default-src 'none'/);
  const whole = await fetch(`${url}/packet/${packet}`);
  assert.match(
    whole.headers.get('content-disposition'),
    /^attachment; filename="[a-z0-9-]+\.zip"$/,
  );
  for (const wrong of [
    `${packet}/data/papers/none.pdf`,
    `${packet}/../book.sqlite`,
    `${'0'.repeat(64)}/${path}`,
    packet.slice(0, 12),
  ]) {
    assert.equal((await fetch(`${url}/packet/${wrong}`)).status, 404, wrong);
  }
});

for (const [name, size, letters] of [
  ['a phone', PHONE, 1],
  ['the narrowest phone', NARROW, 1],
  ['letters twice as large', PHONE, 2],
]) {
  test(`every control of Job file is large enough and nothing is lost: ${name}`, async (t) => {
    const seen = await jobFile(t, size);
    const { page } = seen;
    await page.evaluate((times) => {
      if (times > 1) document.documentElement.style.fontSize = `${112.5 * times}%`;
    }, letters);
    await make(seen);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('main button, main input, main a[href]')]
        .map((control) => control.closest('label') ?? control)
        .map((control) => ({
          name: control.innerText,
          box: control.getBoundingClientRect().toJSON(),
        }))
        .filter(
          ({ box }) =>
            box.width < 71.5 || box.height < 71.5 || box.left < 0 || box.right > innerWidth + 0.5,
        ),
    );
    assert.deepEqual(small, []);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(sideways <= 0, `${sideways} px to the side`);
    await page.screenshot({
      path: new URL(`../out/job-file-${name.replaceAll(' ', '-')}.png`, import.meta.url).pathname,
      fullPage: true,
    });
  });
}
