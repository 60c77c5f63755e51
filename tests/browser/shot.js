// The picture of the README: the pretend house, figures left and sketch right.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { addPretendHouse, open } from './book.js';
import { browser, screen, WIDE } from './screen.js';

const PICTURE = fileURLToPath(new URL('../../assets/screenshot.png', import.meta.url));

const folder = mkdtempSync(join(tmpdir(), 'eavebook-'));
const endings = [() => rmSync(folder, { recursive: true, force: true })];
const whole = { after: (end) => endings.unshift(end) };
try {
  await addPretendHouse(folder);
  const { url } = await open(whole, folder);
  const { page } = await screen(await browser(whole), WIDE);
  await page.goto(url);
  await page.getByRole('list', { name: 'Stops' }).getByRole('button').first().click();
  await page.locator('main[data-place="Field book"] li[data-thing]').first().waitFor();
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: PICTURE });
  console.log(PICTURE);
} finally {
  for (const end of endings) await end();
}
