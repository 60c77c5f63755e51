// What the page weighs, how soon it paints, and how long a key, a photo and a job take. Prints rows for
// `cargo xtask bench`.
import { spawn } from 'node:child_process';
import { closeSync, fsyncSync, mkdtempSync, openSync, readdirSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { createInterface } from 'node:readline';
import { gzipSync } from 'node:zlib';

// The browser tests beside this folder bring the driver.
const { chromium } = createRequire(new URL('../browser/', import.meta.url))('playwright-core');

const row = (...fields) => console.log(['row', ...fields].join('\t'));
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

weigh();
await withServer(paint);
await withServer(pressKeys);
await withServer(shoot);
await withServer(openJobs);

/** The page apart from its fonts, then the fonts, as gzip makes them, against what each may weigh. */
function weigh() {
  const dist = new URL('../../ui/dist', import.meta.url).pathname;
  const files = readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name));
  const kilobytes = (some) => some.reduce((sum, file) => sum + gzipSync(readFileSync(file)).length, 0) / 1000;
  const isFont = (file) => /\.woff2?$/.test(file);
  const [fonts, rest] = [files.filter(isFont), files.filter((file) => !isFont(file))];
  console.log(`${files.length} files, of which ${fonts.length} fonts`);
  row('page without fonts, gzipped, against what it may weigh', kilobytes(rest).toFixed(2), 90, 'kB', 'at most', 1);
  row('fonts, gzipped, against what they may weigh', kilobytes(fonts).toFixed(2), 50, 'kB', 'at most', 1);
}

/** Runs one measurement over a new book, with the folder in which the book lies. */
async function withServer(measure) {
  const folder = mkdtempSync(join(tmpdir(), 'eavebook-bench-'));
  const server = spawn(process.env.EAVEBOOK, ['open', '--port', '0', '--book', folder], { stdio: ['ignore', 'pipe', 'inherit'] });
  const browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', '--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'],
  });
  try {
    await measure({ browser, folder, address: await listening(server) });
  } finally {
    await browser.close();
    server.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * First paint on a machine slowed four times: the page beside the barest page the same server has, the
 * line of text that stands where there is no page. Each load is a fresh browser context, nothing cached.
 */
async function paint({ browser, address }) {
  const [ours, peer] = [[], []];
  for (let round = 0; round < 11; round++) {
    ours.push(await firstPaint(browser, `${address}/`));
    peer.push(await firstPaint(browser, `${address}/no-such-page`));
  }
  console.log(`ours ${ours.map(Math.round)}; peer ${peer.map(Math.round)}`);
  row('first paint, processor slowed 4 x, against a bare page', median(ours).toFixed(1), median(peer).toFixed(1), 'ms', 'at most', 2);
}

/** A phone, its processor slowed `slower` times. */
async function phone(browser, slower) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, isMobile: true, hasTouch: true });
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slower });
  return { context, page };
}

async function ask(address, request) {
  const answer = await fetch(`${address}/command`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(request) });
  const reply = await answer.json();
  if (reply.reply === 'refused') throw new Error(`${JSON.stringify(request)}: ${reply.en}`);
  return reply;
}

/**
 * From a key of the keypad to the frame that shows it, which comes after it is on the disk, processor slowed
 * four times; beside the same page given the same replies out of its own memory, so that nothing is stored.
 */
async function pressKeys({ browser, address }) {
  const { job } = await ask(address, { ask: 'start_job', address: '12 Pretend Lane' });
  await ask(address, { ask: 'open_pad', job, thing: null, blind: false });
  const { context, page } = await phone(browser, 4);
  await page.addInitScript(() => {
    // Replies to keys are kept, and given again once there are some to give.
    const kept = JSON.parse(sessionStorage.getItem('kept') ?? '[]');
    const replies = [];
    window.keep = () => sessionStorage.setItem('kept', JSON.stringify(replies));
    const plain = window.fetch;
    window.fetch = async (...request) => {
      if (!String(request[1]?.body).includes('"ask":"press"')) return plain(...request);
      const known = kept.shift();
      if (known) return new Response(known, { headers: { 'content-type': 'application/json' } });
      const reply = await plain(...request);
      replies.push(await reply.clone().text());
      return reply;
    };
    // Milliseconds from the touch's click to the frame after the slot changed.
    window.pressed = (name) =>
      new Promise((resolve) => {
        const pad = document.querySelector('[aria-label=Keypad]');
        const key = [...pad.querySelectorAll('button')].find((button) => button.innerText.trim() === name);
        const begun = performance.now();
        const seen = new MutationObserver(() => {
          seen.disconnect();
          requestAnimationFrame(() => {
            const channel = new MessageChannel();
            channel.port1.onmessage = () => resolve(performance.now() - begun);
            channel.port2.postMessage(0);
          });
        });
        seen.observe(pad.querySelector('[data-slot]'), { subtree: true, childList: true, characterData: true });
        key.click();
      });
  });
  const times = async () => {
    await page.goto(`${address}/#${job}/3`);
    await page.reload();
    await page.getByRole('group', { name: 'Keypad' }).waitFor();
    const all = [];
    for (let press = 0; press < 120; press++) {
      const took = await page.evaluate((name) => window.pressed(name), press % 2 ? 'Take back one' : String(1 + (press % 9)));
      // The first keys warm the page up.
      if (press >= 20) all.push(took);
      await page.waitForTimeout(20);
    }
    return all.toSorted((a, b) => a - b);
  };
  const stored = await times();
  await page.evaluate(() => window.keep());
  const unstored = await times();
  await context.close();
  const p95 = stored[Math.floor(0.95 * stored.length)];
  console.log(`a key: median ${median(stored).toFixed(1)}, p95 ${p95.toFixed(1)}; not stored: median ${median(unstored).toFixed(1)} ms`);
  row('key press to stored and drawn, p95, processor slowed 4 x, against what it may take', p95.toFixed(1), 50, 'ms', 'at most', 1);
  row('key press to stored and drawn, against the same page without storing', median(stored).toFixed(1), median(unstored).toFixed(1), 'ms', 'at most', 2);
}

/**
 * From the shutter to ready again with a picture of 4032 x 3024 points: what the page takes to make a JPEG of it,
 * and what the program takes to keep that; beside writing and syncing the same bytes in the same folder.
 */
async function shoot({ browser, folder, address }) {
  const { job } = await ask(address, { ask: 'start_job', address: '12 Pretend Lane' });
  const { context, page } = await phone(browser, 1);
  await page.addInitScript(() => {
    navigator.mediaDevices.getUserMedia = async () => {
      const sight = new OffscreenCanvas(4032, 3024);
      const paper = sight.getContext('2d');
      for (let patch = 0; patch < 40_000; patch++) {
        paper.fillStyle = `hsl(${(patch * 47) % 360} 40% ${20 + ((patch * 31) % 60)}%)`;
        paper.fillRect((patch * 7919) % 4032, (patch * 104_729) % 3024, 60, 40);
      }
      const shown = document.createElement('canvas');
      shown.width = 4032;
      shown.height = 3024;
      const drawn = shown.getContext('2d');
      let frame = 0;
      // A camera sees something new at each moment.
      const draw = () => {
        drawn.drawImage(sight, 0, 0);
        drawn.fillText(String(frame++), 20, 20);
      };
      draw();
      setInterval(draw, 100);
      return shown.captureStream(10);
    };
    const plain = window.fetch;
    window.fetch = async (...request) => {
      if (!String(request[0]).startsWith('/photo?')) return plain(...request);
      const begun = performance.now();
      const reply = await plain(...request);
      window.keeping = performance.now() - begun;
      return reply;
    };
    window.shutter = () =>
      new Promise((resolve) => {
        const status = document.querySelector('dialog [role=status]');
        const begun = performance.now();
        const seen = new MutationObserver(() => {
          seen.disconnect();
          resolve([performance.now() - begun, window.keeping]);
        });
        seen.observe(status, { subtree: true, childList: true, characterData: true });
        [...document.querySelectorAll('dialog button')].find((button) => button.innerText.trim() === 'Shutter').click();
      });
  });
  await page.goto(`${address}/#${job}/3`);
  await page.reload();
  await page.getByRole('button', { name: 'Photo', exact: true }).first().click();
  await page.waitForFunction(() => document.querySelector('dialog video')?.videoWidth === 4032);
  const [ready, keeping, peer] = [[], [], []];
  let megabytes = 0;
  for (let shot = 0; shot < 7; shot++) {
    const [whole, kept] = await page.evaluate(() => window.shutter());
    const { photos } = await ask(address, { ask: 'job', job });
    const bytes = Buffer.from(await (await fetch(`${address}/photo/${photos[0].sha256}`)).arrayBuffer());
    megabytes = bytes.length / 1e6;
    ready.push(whole);
    keeping.push(kept);
    peer.push(written(join(folder, 'peer'), bytes));
  }
  await context.close();
  console.log(`${megabytes.toFixed(1)} MB; ready ${ready.map(Math.round)}; keeping ${keeping.map(Math.round)}; peer ${peer.map(Math.round)} ms`);
  row('shutter to ready, 12 megapixels, against what it may take', median(ready).toFixed(1), 1500, 'ms', 'at most', 1);
  row('shutter to ready, 12 megapixels, against writing and syncing the same bytes', median(ready).toFixed(1), median(peer).toFixed(1), 'ms', 'at most', 60);
  row('keeping a photo of 12 megapixels, against writing and syncing the same bytes', median(keeping).toFixed(1), median(peer).toFixed(1), 'ms', 'at most', 12);
}

/** Milliseconds to write bytes to a new file and sync it. */
function written(path, bytes) {
  const begun = performance.now();
  const file = openSync(path, 'w');
  writeSync(file, bytes);
  fsyncSync(file);
  closeSync(file);
  return performance.now() - begun;
}

/** From the address of a job to its leaf: one of 24 photos and 300 entries beside an empty one. */
async function openJobs({ browser, address }) {
  const empty = await ask(address, { ask: 'start_job', address: '1 Pretend Lane' });
  const full = await ask(address, { ask: 'start_job', address: '2 Pretend Lane' });
  const entries = await fill(address, full.job);
  const [ours, peer] = [[], []];
  for (let round = 0; round < 11; round++) {
    ours.push(await opened(browser, address, full.job));
    peer.push(await opened(browser, address, empty.job));
  }
  console.log(`${entries} entries; ours ${ours.map(Math.round)}; empty ${peer.map(Math.round)}`);
  row('opening a job of 24 photos and 300 entries, against an empty job', median(ours).toFixed(1), median(peer).toFixed(1), 'ms', 'at most', 2);
}

/** A walk of eight legs, each read twice, two slopes, 24 photos that are said, and notes up to 300 entries. */
async function fill(address, job) {
  let entries = 1;
  const booked = async (request) => {
    entries += 1;
    return ask(address, { job, ...request });
  };
  const walk = [[20, 'inside'], [18, 'outside'], [24, 'outside'], [60, 'outside'], [24, 'outside'], [18, 'inside'], [20, 'outside'], [24, null]];
  for (const round of [0, 1])
    for (const [k, [feet, turn]] of walk.entries()) {
      const leg = k + 1;
      const { pad } = await ask(address, { ask: 'open_pad', job, thing: { thing: 'leg', leg }, blind: false });
      let press = pad.open.press;
      const keys = [...String(feet)].map((digit) => ({ key: 'digit', digit: Number(digit) }));
      for (const key of [...keys, { key: 'whole' }, { key: 'book_it' }]) {
        await ask(address, { ask: 'press', job, press, key, since_ms: 400 });
        press += 1;
      }
      entries += 1;
      if (round === 0 && turn) await booked({ ask: 'corner', after_leg: leg, turn: { turn } });
    }
  for (const leg of [1, 2]) await booked({ ask: 'pitch', leg, read: { by: 'number', in_12: 6 } });
  const picture = readFileSync(new URL('../../assets/demo/tape-leg-2.jpg', import.meta.url));
  for (let photo = 0; photo < 24; photo++) {
    const query = new URLSearchParams({ job, from: 'camera', of: photo < 8 ? `leg ${photo + 1}` : '' });
    const answer = await fetch(`${address}/photo?${query}`, { method: 'POST', body: Buffer.concat([picture, Buffer.from([photo])]) });
    const { photos } = await answer.json();
    entries += 1;
    await booked({ ask: 'photo_said', photos: [photos[0].entry], word: { word: 'from', distance: 'middle' } });
  }
  for (let note = 0; entries < 300; note++) await booked({ ask: 'visit', note: { note: 'hazard', what: 'ice', seen: note % 2 === 0 } });
  return entries;
}

/** Milliseconds from the start of the navigation until the leaf of a job is there. */
async function opened(browser, address, job) {
  const { context, page } = await phone(browser, 1);
  await page.addInitScript(() => {
    new MutationObserver(() => {
      if (document.querySelector('main[data-place="Field book"] button')) window.there ??= performance.now();
    }).observe(document, { subtree: true, childList: true, attributes: true });
  });
  await page.goto(`${address}/#${job}/3`);
  await page.waitForFunction(() => window.there);
  const took = await page.evaluate(() => window.there);
  await context.close();
  return took;
}

async function listening(server) {
  for await (const line of createInterface({ input: server.stdout })) {
    const found = /^listening on (http:\S+)$/.exec(line);
    if (found) return found[1];
  }
  throw new Error('eavebook open ended before it listened');
}

/** Milliseconds from the start of the navigation to the first paint that has content. */
async function firstPaint(browser, address) {
  const { context, page } = await phone(browser, 4);
  try {
    await page.goto(address);
    return await page.evaluate(
      () =>
        new Promise((resolve) => {
          const told = (entries) => {
            const paint = entries.find((entry) => entry.name === 'first-contentful-paint');
            if (paint) resolve(paint.startTime);
          };
          new PerformanceObserver((list) => told(list.getEntries())).observe({ type: 'paint', buffered: true });
        }),
    );
  } finally {
    await context.close();
  }
}
