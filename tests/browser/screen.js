// A phone in a browser, and the hand that taps it.
import { chromium } from 'playwright-core';
import { after } from 'node:test';
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const OUT = fileURLToPath(new URL('../out/', import.meta.url));

export const PHONE = { width: 390, height: 844 };
export const SMALL_PHONE = { width: 360, height: 640 };
export const NARROW = { width: 320, height: 640 };
export const WIDE = { width: 1280, height: 800 };

let started = null;
after(async () => (await started)?.close());

/** The browser of this test file, started once and closed at its end. */
function browser() {
  if (started) return started;
  started = chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--disable-default-apps',
      '--no-first-run',
      '--metrics-recording-only',
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
    ],
  });
  return started;
}

/**
 * A page of the given size. Records what was asked to be spoken, what went wrong in it, and every
 * host it asked.
 */
export async function screen(size = PHONE) {
  const touch = size.width < 1000;
  const context = await (
    await browser()
  ).newContext({
    viewport: size,
    hasTouch: touch,
    isMobile: touch,
    deviceScaleFactor: touch ? 2 : 1,
  });
  await context.addInitScript(() => {
    window.spoken = [];
    const speak = SpeechSynthesis.prototype.speak;
    SpeechSynthesis.prototype.speak = function (said) {
      window.spoken.push(said.text);
      return speak.call(this, said);
    };
  });
  const page = await context.newPage();
  // Patience, not a measure: a busy machine may take long for what a phone does at once.
  page.setDefaultTimeout(60_000);
  const hosts = new Set();
  const wrong = [];
  page.on('request', (request) => hosts.add(new URL(request.url()).hostname));
  page.on('pageerror', (error) => wrong.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && wrong.push(message.text()));
  const hand = new Hand(page, touch);
  return { page, hand, hosts, wrong, context };
}

/** Taps, counted, and how often a person would have had to scroll for one. */
export class Hand {
  taps = 0;
  scrolls = 0;

  constructor(page, touch) {
    this.page = page;
    this.touch = touch;
  }

  button(name) {
    return this.page.getByRole('button', { name, exact: true });
  }

  async tap(target) {
    const there = typeof target === 'string' ? this.button(target).last() : target;
    if (!(await uncovered(there))) this.scrolls += 1;
    await (this.touch ? there.tap() : there.click());
    this.taps += 1;
  }

  /** Starts a job from Today. */
  async start(address) {
    await this.page.locator('main').waitFor();
    if ((await this.page.locator('main[data-place="Today"]').count()) === 0)
      await toPlace({ page: this.page, hand: this }, 'Today');
    await this.tap('Start a job');
    await this.page.getByRole('textbox', { name: 'Address' }).fill(address);
    await this.tap('Start');
    await this.page.locator('main[data-place="Field book"]').waitFor();
  }

  /** Opens the first job of Today. The frame moves under the finger when it comes. */
  async openFirstStop(list = 'Stops') {
    await this.tap(this.page.getByRole('list', { name: list }).getByRole('button').first());
    await this.page.locator('main:not([data-place="Today"])').waitFor();
  }

  /**
   * Opens the list of places where it is folded. A tap that comes while the frame changes under
   * the finger is lost, and given once more, as a person would.
   */
  async unfold() {
    const nav = this.page.locator('nav');
    await nav.waitFor();
    const fold = nav.locator('button[aria-expanded]');
    if (!(await fold.isVisible())) return;
    const open = nav.locator('button[aria-expanded="true"]');
    const opens = () =>
      open.waitFor({ timeout: 3000 }).then(
        () => true,
        () => false,
      );
    await this.tap(fold);
    if (!(await opens()))
      await fold.evaluate((button) => button.ariaExpanded === 'true' || button.click());
    await open.waitFor();
  }

  /** Types a length, `42 ft 7`, on the open keypad and books it. */
  async book(length) {
    const pad = this.page.getByRole('group', { name: 'Keypad' });
    for (const key of keysOf(length))
      await this.tap(pad.getByRole('button', { name: key, exact: true }));
    await this.tap(pad.getByRole('button', { name: 'Book it', exact: true }));
    await pad.waitFor({ state: 'detached' });
  }

  /** Books a whole walk: the first leg with Read, each next after its corner. */
  async walk(legs) {
    await this.tap('Read');
    for (const [i, { length, corner }] of legs.entries()) {
      await this.book(length);
      if (i + 1 < legs.length) await this.tap(corner);
    }
  }
}

// The driver scrolls when what it taps is covered at that moment, though it be by a leaf that is
// just giving way; a person waits for it. What stays off the screen is left for the driver to
// scroll to. Gives whether it is under the finger now.
async function uncovered(there) {
  await there.waitFor();
  return there.evaluate(async (control) => {
    for (let frame = 0; frame < 60 && control.isConnected; frame += 1) {
      const { x, y, width, height } = control.getBoundingClientRect();
      const top = document.elementFromPoint(x + width / 2, y + height / 2);
      if (control.contains(top)) return true;
      if (!top) return false;
      await new Promise(requestAnimationFrame);
    }
    return !control.isConnected;
  });
}

/** Goes to a place by the list of places, and waits until it is there. */
export async function toPlace({ page, hand }, name) {
  await hand.unfold();
  const nav = page.getByRole('navigation', { name: 'Places' });
  await hand.tap(nav.getByRole('button', { name, exact: true }));
  if (name !== 'Settings') await page.locator(`main[data-place="${name}"]`).waitFor();
}

/** Waits until the page has drawn what the acts before it led to. */
export async function drawn(page) {
  await page.evaluate(async () => {
    for (let frame = 0; frame < 3; frame += 1) await new Promise(requestAnimationFrame);
  });
}

/** The keys that type a length: `42 ft 7 1/2`. */
export function keysOf(length) {
  return length.split(' ').flatMap((word) => {
    if (word === 'ft' || word === 'in') return [word];
    return word.includes('/') ? ['Fraction', word] : [...word];
  });
}

/** A picture of the screen for people to look at. */
export async function picture(page, name) {
  mkdirSync(OUT, { recursive: true });
  await page.screenshot({ path: `${OUT}${name}.png` });
}
