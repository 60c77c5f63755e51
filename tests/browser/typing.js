// Readings typed key by key through the one boundary, without a page.
import assert from 'node:assert/strict';
import { keysOf } from './screen.js';

const KEYS = { ft: { key: 'whole' }, in: { key: 'inches' }, 'Book it': { key: 'book_it' } };

/** Types a length of a leg and books it; the job as it then stands. */
export function type(ask, job, leg, length, how = 'taped') {
  return typeThing(ask, job, { thing: 'leg', leg }, length, how);
}

/** Types a length of any thing and books it; the job as it then stands. */
export async function typeThing(ask, job, thing, length, how = 'taped') {
  const reply = await ask({ ask: 'open_pad', job, thing, blind: false });
  let { press } = reply.pad.open;
  if (how !== 'taped') await ask({ ask: 'chip', job, how, followed: 'eave_edge' });
  let last = reply;
  for (const name of [...keysOf(length), 'Book it']) {
    const key = KEYS[name] ?? { key: 'digit', digit: Number(name) };
    last = await ask({ ask: 'press', job, press, key, since_ms: 400 });
    assert.ok(!last.pad?.refused, JSON.stringify(last.pad?.refused));
    press += 1;
  }
  assert.equal(last.reply, 'job', JSON.stringify(last));
  return last;
}
