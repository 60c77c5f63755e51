// The solid view on the Plan place: five fixed places, controls for a hand, nothing past the screen.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { addPretendHouse, newBook, open } from './book.js';
import { NARROW, PHONE, picture, screen, toPlace } from './screen.js';

const SCREENS = [
  { name: '320 px', size: NARROW, letters: 1 },
  { name: 'text at 200 %', size: PHONE, letters: 2 },
];

for (const { name, size, letters } of SCREENS) {
  test(`the roof is seen as a solid from five places at ${name}`, async (t) => {
    const folder = newBook(t);
    await addPretendHouse(folder);
    const { url } = await open(t, folder);
    const seen = await screen(size);
    const { page, hand, wrong } = seen;
    await seen.context.addInitScript((times) => {
      addEventListener('DOMContentLoaded', () => {
        document.documentElement.style.fontSize = `${112.5 * times}%`;
      });
    }, letters);
    await page.goto(url);
    await hand.openFirstStop();
    await toPlace(seen, 'Plan');
    const solid = page.getByRole('region', { name: '3D view' });
    const buttons = solid.getByRole('button');
    assert.equal(await buttons.count(), 5);
    for (const button of await buttons.all()) {
      const box = await button.boundingBox();
      assert.ok(Math.min(box.width, box.height) >= 72, JSON.stringify(box));
      const from = await button.innerText();
      await hand.tap(button);
      const drawn = solid.getByRole('img', { name: `3D view ${from}` });
      await drawn.waitFor();
      assert.ok((await drawn.locator('path').count()) > 2, from);
      assert.match(await solid.innerText(), /Turned this way: .+\./);
      const past = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      assert.equal(past, 0, from);
    }
    await solid.scrollIntoViewIfNeeded();
    await picture(page, `solid-${letters}`);
    assert.deepEqual(wrong, []);
  });
}
