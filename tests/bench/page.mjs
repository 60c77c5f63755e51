// What the page weighs and how soon it paints. Prints rows for `cargo xtask bench`.
import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
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
await paint();

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

/**
 * First paint on a machine slowed four times: the page beside the barest page the same server has, the
 * line of text that stands where there is no page. Each load is a fresh browser context, nothing cached.
 */
async function paint() {
  const book = mkdtempSync(join(tmpdir(), 'eavebook-bench-'));
  const server = spawn(process.env.EAVEBOOK, ['open', '--port', '0', '--book', book], { stdio: ['ignore', 'pipe', 'inherit'] });
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  try {
    const address = await listening(server);
    const [ours, peer] = [[], []];
    for (let round = 0; round < 11; round++) {
      ours.push(await firstPaint(browser, `${address}/`));
      peer.push(await firstPaint(browser, `${address}/no-such-page`));
    }
    console.log(`ours ${ours.map(Math.round)}; peer ${peer.map(Math.round)}`);
    row('first paint, processor slowed 4 x, against a bare page', median(ours).toFixed(1), median(peer).toFixed(1), 'ms', 'at most', 2);
  } finally {
    await browser.close();
    server.kill();
    rmSync(book, { recursive: true, force: true });
  }
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
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, isMobile: true, hasTouch: true });
  try {
    const page = await context.newPage();
    const devtools = await context.newCDPSession(page);
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: 4 });
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
