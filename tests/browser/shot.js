// The picture of the README: the pretend house, figures left and sketch right. Run by `npm run
// shot`, since it writes into assets.
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { addPretendHouse, newBook, open } from './book.js';
import { screen, WIDE } from './screen.js';

const PICTURE = fileURLToPath(new URL('../../assets/screenshot.png', import.meta.url));

test('the picture of the README is taken of the pretend house', async (t) => {
  const folder = newBook(t);
  await addPretendHouse(folder);
  const { url } = await open(t, folder);
  const { page } = await screen(WIDE);
  await page.goto(url);
  await page.getByRole('list', { name: 'Stops' }).getByRole('button').first().click();
  await page.locator('main[data-place="Field book"] li[data-thing]').first().waitFor();
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: PICTURE });
  t.diagnostic(PICTURE);
});
