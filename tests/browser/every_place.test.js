// Each place in its empty, working and error state: read by anyone by day and by night, nothing over
// the side, and all of them on one sheet in gray.
import assert from 'node:assert/strict';
import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { everyPlace } from './every_place.js';
import { NARROW, PHONE, screen, WIDE } from './screen.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const OUT = new URL('../out/places/', import.meta.url).pathname;

// Serious faults. By night the page differs in its colors alone, so those alone are judged again.
async function grave(page) {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const judged = async (how) => {
      const { violations } = await window.axe.run(how);
      const found = violations.filter(({ impact }) => ['serious', 'critical'].includes(impact));
      return found.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]);
    };
    const day = await judged({ rules: { 'color-contrast-enhanced': { enabled: true } } });
    const root = document.documentElement;
    const { leaf } = root.dataset;
    root.dataset.leaf = 'night';
    const night = await judged({ runOnly: ['color-contrast', 'color-contrast-enhanced'] });
    root.dataset.leaf = leaf ?? 'sun';
    return [...day, ...night];
  });
}

const overTheSide = (page) =>
  page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

for (const [name, size] of Object.entries({ phone: PHONE, narrow: NARROW, wide: WIDE })) {
  test(`every place has no serious fault, empty, working and in error, by day and by night, ${name}`, async (t) => {
    mkdirSync(OUT, { recursive: true });
    const all = [];
    const faults = [];
    const wrong = await everyPlace(t, size, async ({ page, place, state }) => {
      const found = await grave(page);
      const over = await overTheSide(page);
      if (over > 0) found.push(`${over} px over the side`);
      if (found.length > 0) faults.push([place, state, found]);
      const file = `${OUT}${name}-${place.toLowerCase().replaceAll(' ', '-')}-${state}.png`;
      const whole = file.replace('.png', '-whole.png');
      all.push({ title: `${place}, ${state}`, shot: await page.screenshot({ path: file }) });
      if (name !== 'wide') await page.screenshot({ path: whole, fullPage: true });
    });
    assert.deepEqual(faults, []);
    assert.deepEqual(wrong, []);
    if (size.width < 1000) await sheet(all, size, `${OUT}../states-gray-${name}.png`);
    t.diagnostic(`${all.length} states judged by day and by night, 0 serious`);
  });
}

// All states on one sheet, as a printer without colors would show them.
async function sheet(all, { width, height }, path) {
  const { page } = await screen({ width: 1900, height: 1000 });
  const figures = all.map(
    ({ title, shot }) =>
      `<figure><img src="data:image/png;base64,${shot.toString('base64')}"><figcaption>${title}</figcaption></figure>`,
  );
  await page.setContent(
    `<style>body{margin:8px;display:grid;grid-template-columns:repeat(9,1fr);gap:8px;filter:grayscale(1);font:12px sans-serif}
     figure{margin:0}img{width:100%;aspect-ratio:${width}/${height};border:1px solid}</style>${figures.join('')}`,
  );
  await page.screenshot({ path, fullPage: true });
}
