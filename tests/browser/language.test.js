// The page in its second language, and on its second ground.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { addPretendHouse, newBook, open } from './book.js';
import { NARROW, PHONE, picture, screen } from './screen.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const LUGARES = [
  'Llegada',
  'La vuelta',
  'Libreta',
  'Plano',
  'Antes de irse',
  'Material',
  'Expediente',
];

async function toPlace({ page, hand }, name) {
  const nav = page.locator('nav');
  await hand.unfold();
  await hand.tap(nav.getByRole('button', { name, exact: true }));
}

async function grave(page) {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() =>
    window.axe.run({ rules: { 'color-contrast-enhanced': { enabled: true } } }),
  );
  const found = violations.filter(({ impact }) => ['serious', 'critical'].includes(impact));
  return found.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]);
}

test('Spanish is chosen in Settings, stays, and no control of the frame or a place stays English', async (t) => {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { url } = await open(t, folder);
  const { page, hand, wrong } = await screen(NARROW);
  await page.goto(url);
  await page.getByRole('list', { name: 'Stops' }).waitFor();
  await toPlace({ page, hand }, 'Settings');
  await hand.tap(page.getByRole('radio', { name: 'Español' }));
  await page.locator('html[lang="es"]').waitFor();
  await hand.openFirstStop('Paradas');
  assert.equal(await page.evaluate(() => document.documentElement.lang), 'es');
  const SAME = new Set(['No', 'Plan', 'Total', 'Español', 'English']);
  for (const lugar of LUGARES) {
    await toPlace({ page, hand }, lugar);
    await page.locator('main').getByRole('button').first().waitFor();
    const names = await page.evaluate(() =>
      [
        ...document.querySelectorAll('.foot button, main .controls > button, main .bar > button'),
      ].map((control) => control.innerText.trim()),
    );
    const left = names.filter((name) =>
      /\b(Read|Photo|What's|Undo|Redo|Strike|Story|Again|Send|Leave|Close|Front)\b/.test(
        name,
      ),
    );
    assert.deepEqual(
      left.filter((name) => !SAME.has(name)),
      [],
      lugar,
    );
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(over <= 0, `${lugar}: ${over} px to the side`);
    assert.deepEqual(await grave(page), [], lugar);
    await picture(page, `es-${LUGARES.indexOf(lugar)}`);
  }
  // The names by which a script finds a state are the same in every language.
  await toPlace({ page, hand }, 'Libreta');
  await page
    .locator(
      'main li[data-thing="leg 1"][data-state="proved"], main li[data-thing="leg 1"][data-state="agreed"]',
    )
    .waitFor();
  await hand.tap('Medir');
  const pad = page.getByRole('group', { name: 'Teclado' });
  const cut = await pad.evaluate((group) =>
    [...group.querySelectorAll('button')]
      .filter(
        (key) => key.scrollWidth > key.clientWidth + 1 || key.scrollHeight > key.clientHeight + 1,
      )
      .map((key) => key.innerText),
  );
  assert.deepEqual(cut, []);
  await picture(page, 'es-keypad');
  assert.deepEqual(wrong, []);
});

// Every text of the leaf with letters in it, in the order of the page.
const texts = (page) =>
  page.evaluate(() => {
    const found = [];
    const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
      const text = walk.currentNode.textContent.trim();
      if (/[A-Za-zÀ-ÿ]{2}/.test(text)) found.push(text);
    }
    return found;
  });

test('most of what the replies say of the pretend house is told in Spanish too', async (t) => {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { url, ask } = await open(t, folder);
  const { stops } = await ask({ ask: 'today' });
  const told = {};
  for (const language of ['english', 'spanish']) {
    await ask({ ask: 'set', setting: { set: 'language', to: language } });
    const { page, hand } = await screen(PHONE);
    told[language] = [];
    for (const place of [1, 2, 3, 4, 5, 7]) {
      await page.goto(`${url}/#${stops[0].job}/${place}`);
      await page.reload();
      await page.locator('main').getByRole('button').nth(2).waitFor();
      if (place === 4) await hand.tap(language === 'english' ? 'List' : 'Lista');
      told[language].push(await texts(page));
    }
  }
  let all = 0;
  const untold = [];
  for (const [i, spanish] of told.spanish.entries()) {
    const english = new Set(told.english[i]);
    all += spanish.length;
    untold.push(...spanish.filter((text) => english.has(text)));
  }
  const share = 1 - untold.length / all;
  assert.ok(share >= 0.85, `${untold.length} of ${all}: ${[...new Set(untold)].join(' | ')}`);
  t.diagnostic(
    `${all - untold.length} of ${all} texts at six places are told in Spanish; not: ${[...new Set(untold)].join(' | ')}`,
  );
});

test('a reading is read back in the language of the page, digit by digit', async (t) => {
  const { url, ask } = await open(t, newBook(t));
  await ask({ ask: 'set', setting: { set: 'language', to: 'spanish' } });
  const { job } = await ask({ ask: 'start_job', address: '12 Pretend Lane' });
  const { page, hand, wrong } = await screen(PHONE);
  await page.addInitScript(() => {
    const speak = SpeechSynthesis.prototype.speak;
    SpeechSynthesis.prototype.speak = function (said) {
      window.tongue = said.lang;
      return speak.call(this, said);
    };
  });
  await page.goto(`${url}/#${job}/3`);
  await hand.tap('Medir');
  const pad = page.getByRole('group', { name: 'Teclado' });
  for (const key of ['4', '2', 'pies', '7', 'Fracción', '1/2', 'Anotar'])
    await hand.tap(pad.getByRole('button', { name: key, exact: true }));
  await page.locator('[data-value="42 ft 7 1/2 in"]').first().waitFor();
  await page.waitForFunction(() => window.spoken.length > 0);
  assert.equal(
    await page.evaluate(() => window.spoken.at(-1)),
    'cuatro dos pies, siete pulgadas y media',
  );
  assert.equal(await page.evaluate(() => window.tongue), 'es');
  assert.deepEqual(wrong, []);
});

test('the night keeps text at 7 to 1 and every line, and stays after a restart of the page', async (t) => {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { url } = await open(t, folder);
  const { page, hand } = await screen(PHONE);
  await page.goto(url);
  await hand.openFirstStop();
  await toPlace({ page, hand }, 'Settings');
  await hand.tap(page.getByRole('radio', { name: 'night' }));
  await page.locator('html[data-theme="night"]').waitFor();
  await hand.tap(page.getByRole('dialog').getByRole('button', { name: 'Close' }));
  await page.reload();
  await page.locator('html[data-theme="night"]').waitFor();
  for (const place of ['Plan', 'Field book', 'Leave-site check', 'Job file']) {
    await toPlace({ page, hand }, place);
    await page.locator(`main[data-place="${place}"]`).getByRole('button').first().waitFor();
    assert.deepEqual(await grave(page), [], place);
    await picture(page, `night-${place.toLowerCase().replace(' ', '-')}`);
  }
  const ground = await page.evaluate(
    () => getComputedStyle(document.documentElement).backgroundColor,
  );
  assert.equal(ground, 'rgb(16, 22, 28)');
});

test('the caution of a cold phone comes where larger keys are chosen', async (t) => {
  const { url } = await open(t, newBook(t));
  const { page, hand } = await screen(PHONE);
  await page.goto(url);
  await page.getByRole('button', { name: 'Start a job' }).waitFor();
  await toPlace({ page, hand }, 'Settings');
  assert.equal(await page.locator('[data-caution="C12"]').count(), 0);
  await hand.tap(page.getByRole('switch', { name: 'Cold hands' }));
  await page.locator('[data-caution="C12"]').waitFor();
});
