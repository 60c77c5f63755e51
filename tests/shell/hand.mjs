// A book of its own in the real window, and the hand that works in it; what it presses is counted.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openWindow, startDriver } from './webdriver.mjs';

const TARGET = process.env.CARGO_TARGET_DIR ?? fileURLToPath(new URL('../../target', import.meta.url));
const SHELL = process.env.EAVEBOOK_SHELL ?? join(TARGET, 'debug/eavebook-shell');
const OUT = fileURLToPath(new URL('../out/', import.meta.url));

/** A window as wide and high as a phone, and one on a desk, pixels. */
export const PHONE = [390, 844];
export const DESK = [1200, 840];

export const button = (name) => `//button[normalize-space()="${name}" or @aria-label="${name}"]`;
export const region = (name) => `//section[@aria-label="${name}"]`;
export const key = (name) => `//*[@role="group"][@aria-label="Keypad"]${button(name)}`;

/** The program with an empty book in a window; both are gone after the test. `home`: the person's folder. */
export async function windowOf(t, size, home = process.env.HOME) {
  const book = mkdtempSync(join(tmpdir(), 'eavebook-shell-'));
  const driver = await startDriver({ EAVEBOOK_BOOK: book, HOME: home });
  const page = await openWindow(driver, SHELL);
  t.after(async () => {
    await page.close();
    driver.stop();
    rmSync(book, { recursive: true, force: true });
  });
  await page.resize(...size);
  return new Hand(page);
}

export class Hand {
  taps = 0;

  constructor(page) {
    this.page = page;
  }

  async tap(xpath) {
    await this.page.click(xpath);
    this.taps += 1;
  }

  /** Starts a job from Today. */
  async start(address) {
    await this.tap(button('Start a job'));
    await this.page.type('//input[@type="text"]', address);
    await this.tap(button('Start'));
    await this.page.sees('//main[@data-place="Field book"]');
  }

  /** Types a length, `42 ft 7`, on the open keypad and books it. */
  async book(length) {
    const keys = length.split(' ').flatMap((word) => (word === 'ft' ? [word] : [...word]));
    for (const name of keys) await this.tap(key(name));
    await this.tap(key('Book it'));
    await this.page.sees(region('Read-back'));
  }

  /** Goes by the list of places, which is folded where it is narrow. */
  async go(name) {
    // The one that unfolds the list may say the same, and be hidden.
    const there = `//nav//button[not(@aria-expanded)][normalize-space()="${name}"]`;
    const folded = '//nav//button[@aria-expanded="false"]';
    if (await this.page.run(`arguments[arguments.length - 1](innerWidth < 1000)`)) await this.tap(folded);
    await this.tap(there);
  }

  /** Waits until the line of copies says it. */
  copies(text) {
    return this.page.sees(`//*[@role="status"][@aria-label="Copies"][contains(., "${text}")]`);
  }

  /** For people to look at. */
  async picture(name) {
    mkdirSync(OUT, { recursive: true });
    writeFileSync(join(OUT, `shell-${name}.png`), await this.page.screenshot());
  }
}
