// One whole visit, from the first street name to the packet.

/** The visit, told to whatever does it: `act` names what follows, `press` and `write` do it. */
export async function visit(page, by) {
  const button = (name, within = page) => within.getByRole('button', { name, exact: true }).last();
  const says = (words) => page.getByRole('status').filter({ hasText: words }).waitFor();
  const at = (place) => page.locator(`main[data-place="${place}"]`).waitFor();
  const goes = async (place) => {
    by.act(`Go to ${place}`);
    await by.press(page.locator('nav button.fold'));
    await by.press(button(place, page.getByRole('navigation', { name: 'Places' })));
    await at(place);
  };

  by.act('Start a job');
  await by.press(button('Start a job'));
  await by.write(page.getByRole('textbox', { name: 'Address' }), '12 Pretend Lane');
  await by.press(button('Start'));
  await at('Field book');

  await goes('Arrive');
  by.act('Say where the front is, who is here and what they allow');
  await by.press(button('This is the front'));
  await says('The front is recorded');
  await by.write(page.getByRole('textbox', { name: 'Name or role' }), 'the owner');
  await by.press(button('Record'));
  await by.press(page.getByRole('checkbox', { name: 'Walk round' }));
  await page.getByText(/^the owner, \d/).waitFor();

  await goes('Walk-round');
  by.act('Take a photo of the front and say what it shows');
  await by.press(button('Photo'));
  const camera = page.getByRole('dialog', { name: 'Camera' });
  await camera.getByRole('button', { name: 'Shutter' }).waitFor();
  await by.press(button('Shutter', camera));
  await camera.getByText('Photo 1 is kept.').waitFor();
  await by.press(button('Done', camera));
  const photo = page.locator('main li[data-thing="photo 1"]');
  await by.press(button('Front', photo));
  await photo.and(page.locator('[data-state=confirmed]')).waitFor();

  by.act('Read four legs');
  await by.press(button('Read'));
  const pad = page.getByRole('group', { name: 'Keypad' });
  for (const [leg, feet] of ['42', '24', '42', '24'].entries()) {
    await pad.waitFor();
    await by.figures(pad, feet);
    await by.press(button('ft', pad));
    await by.press(button('Book it', pad));
    await by.press(button('Right', page.getByRole('region', { name: 'Read-back' })));
    if (leg < 3) await by.press(button('Outside corner'));
  }
  await page.locator('section[aria-label=Closure][data-state=closes]').waitFor();

  await goes('Plan');
  by.act('Read the pitch of a face by level and tape');
  await by.press(button('List'));
  await by.press(page.locator('main li[data-thing="face 1"] button').first());
  await by.press(button('Pitch'));
  const pitch = page.getByRole('region', { name: 'Pitch', exact: true });
  await by.press(button('Level and tape', pitch));
  for (let inch = 0; inch < 6; inch += 1) await by.press(button('One inch more', pitch));
  await by.press(button('Book it', pitch));
  await pitch.and(page.locator('[data-value="26.6°"]')).waitFor();

  await goes('Leave-site check');
  by.act('Note that nothing was promised, come back, leave');
  const promise = page.locator('main li[data-thing=promise]');
  while ((await promise.count()) === 0) await by.press(button('Next page'));
  await by.press(button('Go', promise));
  await by.press(button('Nothing promised'));
  await by.press(button('Back to check'));
  await by.press(button('Leave'));
  await says(/check complete/i);

  await goes('Job file');
  by.act('Make the packet');
  await by.press(button('Make packet'));
  await page
    .getByRole('list', { name: 'Packets' })
    .getByRole('listitem')
    .first()
    .waitFor({ timeout: 180_000 });
}
