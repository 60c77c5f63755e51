import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newBook, open } from './book.js';
import { draws } from './draws.js';
import { type } from './typing.js';
import { tHouse } from './walks.js';

// Minutes of asking: a file of its own, by whose name it begins early beside the others.
test('of 500 single swaps of two digits that closure can see, the true leg is named', async (t) => {
  const { ask } = await open(t, newBook(t));
  const draw = draws(500);
  let seen = 0;
  let among = 0;
  let atMostTwo = 0;
  let drawn = 0;
  while (seen < 500) {
    const legs = tHouse(swappable(draw));
    const book = await bookAll(ask, legs, drawn);
    for (const [i, { feet }] of legs.entries()) {
      const swapped = (feet % 10) * 10 + Math.floor(feet / 10);
      if (swapped === feet || seen === 500) continue;
      drawn += 1;
      const closure = await misread(ask, book, { leg: i + 1, feet, swapped });
      if (closure.state !== 'gap') continue;
      seen += 1;
      if (closure.suspects.length <= 2) atMostTwo += 1;
      if (closure.suspects.some(({ thing }) => thing === `leg ${i + 1}`)) among += 1;
    }
  }
  t.diagnostic(
    `${among} of ${seen} true legs among the suspects, at most two named in ${atMostTwo}; ${drawn} swaps drawn`,
  );
  assert.equal(atMostTwo, seen);
  assert.ok(among >= 0.9 * seen, `${among} of ${seen}`);
});

// Feet of two digits that differ and are not 0, so that a swap shows a length of two digits again.
function swappable(draw) {
  const feet = () => 10 * (1 + draw(6)) + 1 + draw(9);
  for (;;) {
    const house = { stem: feet(), left: feet(), bar: feet(), right: feet(), width: feet() };
    if (house.left + house.width + house.right < 100) return house;
  }
}

const TURNS = { 'Outside corner': { turn: 'outside' }, 'Inside corner': { turn: 'inside' } };

async function bookAll(ask, legs, number) {
  const { job } = await ask({ ask: 'start_job', address: `${number} Pretend Lane` });
  const readings = [];
  for (const [i, { length, corner }] of legs.entries()) {
    const told = await type(ask, job, i + 1, length);
    readings.push(told.pad.read_back.reading);
    if (i + 1 < legs.length) {
      await ask({ ask: 'corner', job, after_leg: i + 1, turn: TURNS[corner] });
    }
  }
  return { job, readings };
}

// Puts a swapped reading in the place of a leg's, looks at closure, and books the true one again.
async function misread(ask, { job, readings }, { leg, feet, swapped }) {
  await ask({ ask: 'strike', job, entry: readings[leg - 1], reason: null });
  const told = await type(ask, job, leg, `${swapped} ft`);
  await ask({ ask: 'strike', job, entry: told.pad.read_back.reading, reason: null });
  const mended = await type(ask, job, leg, `${feet} ft`);
  readings[leg - 1] = mended.pad.read_back.reading;
  return told.closure;
}
