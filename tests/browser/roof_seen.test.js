// What somebody saw of the roof is set beside the computed one: said in a sentence, on the face and
// at the check, and struck like anything else.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { NARROW, PHONE, picture, screen, toPlace } from './screen.js';
import { rectangle } from './walks.js';

for (const size of [PHONE, NARROW]) {
  test(`a gable seen where a hip is drawn is said on the face and at the check, ${size.width} wide`, async (t) => {
    const { url, ask } = await open(t, newBook(t));
    const { page, hand } = await screen(size);
    await page.goto(url);
    await hand.start('5 Invented Road');
    await hand.walk(rectangle('40 ft', '20 ft'));
    const { stops } = await ask({ ask: 'today' });
    const { job } = stops[0];
    for (const leg of [1, 2, 3, 4]) {
      await ask({ ask: 'pitch', job, leg, read: { by: 'number', in_12: 6 } });
    }
    await page.reload();
    await toPlace({ page, hand }, 'Plan');
    await hand.tap('List');
    const face = page.locator('[data-thing="face 2"]');
    await hand.tap(face.getByRole('button').first());
    await hand.tap(face.getByRole('button', { name: 'Condition', exact: true }));
    const group = face.getByRole('group', { name: 'What was seen over this leg' });
    await hand.tap(group.getByRole('button', { name: 'A gable' }));
    const said = face.getByText('Leg 2 was seen as a gable and is drawn as a slope');
    await said.waitFor();
    await picture(page, `roof seen, ${size.width} wide`);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    assert.ok(wide <= size.width, `${wide} px`);
    await toPlace({ page, hand }, 'Leave-site check');
    const card = page.locator('[data-thing="roof seen"]');
    await card.getByRole('button', { name: 'Go' }).waitFor();
    await hand.tap(card.getByRole('button', { name: 'Go' }));
    await page.getByRole('region', { name: 'Face 2', exact: true }).waitFor();
  });
}
