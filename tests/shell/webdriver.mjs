// The WebDriver protocol (W3C), as much of it as the shell test speaks, over plain fetch.
import { spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';

/** How long a thing may take to appear before the test gives up on it. */
const PATIENCE = 60_000;

/** How the protocol marks an element in what it carries. */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

/** Starts the driver that starts windows; `env` reaches the window's program. */
export async function startDriver(env) {
  const [port, nativePort] = [await freePort(), await freePort()];
  const words = ['--port', port, '--native-port', nativePort, '--native-driver', '/usr/bin/WebKitWebDriver'];
  const driver = spawn('tauri-driver', words.map(String), {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'inherit', 'inherit'],
    // A group of its own: a window that outlived its driver would hold the output open, and whoever
    // reads that would wait for ever.
    detached: true,
  });
  const address = `http://127.0.0.1:${port}`;
  await until('the driver answers', async () => (await fetch(`${address}/status`)).ok);
  return { address, stop: () => process.kill(-driver.pid, 'SIGKILL') };
}

/** Opens a window of the program and gives what can be done in it. */
export async function openWindow(driver, application) {
  const capabilities = { alwaysMatch: { browserName: 'wry', 'tauri:options': { application } } };
  const { sessionId } = await ask(driver.address, 'POST', '/session', { capabilities });
  const said = (method, path, body) => ask(driver.address, method, `/session/${sessionId}${path}`, body);
  const find = (xpath) =>
    until(xpath, async () => Object.values(await said('POST', '/element', { using: 'xpath', value: xpath }))[0]);

  const all = (xpath) => said('POST', '/elements', { using: 'xpath', value: xpath });

  return {
    /** Waits for an element and gives one of its attributes. */
    attribute: async (xpath, name) => said('GET', `/element/${await find(xpath)}/attribute/${name}`),
    /** Waits until it is there. */
    sees: async (xpath) => void (await find(xpath)),
    /** Makes the window so many pixels wide and high. */
    resize: (width, height) => said('POST', '/window/rect', { width, height }),
    text: async (xpath) => said('GET', `/element/${await find(xpath)}/text`),
    /** Presses what is there. What the foot of the screen covers is moved to its middle first, as by a thumb. */
    click: (xpath) =>
      until(`pressing ${xpath}`, async () => {
        const there = await find(xpath);
        try {
          await said('POST', `/element/${there}/click`, {});
        } catch (covered) {
          const script = `arguments[0].scrollIntoView({ block: 'center' })`;
          await said('POST', '/execute/sync', { script, args: [{ [ELEMENT]: there }] });
          throw covered;
        }
        return true;
      }),
    /** How many there are now. */
    count: async (xpath) => (await all(xpath)).length,
    /** Waits until there is none. */
    gone: (xpath) => until(`no ${xpath}`, async () => (await all(xpath)).length === 0),
    type: async (xpath, text) => said('POST', `/element/${await find(xpath)}/value`, { text }),
    /** Runs the body of a function in the page; it ends by calling its last argument. */
    run: (script, ...args) => said('POST', '/execute/async', { script, args }),
    /** PNG. */
    screenshot: async () => Buffer.from(await said('GET', '/screenshot'), 'base64'),
    close: () => said('DELETE', ''),
  };
}

/** Tries until it works: a window draws when it is ready, not when it is asked. */
async function until(what, attempt) {
  const end = Date.now() + PATIENCE;
  for (;;) {
    try {
      const got = await attempt();
      if (got) return got;
    } catch (cause) {
      if (Date.now() > end) throw new Error(`never came: ${what}`, { cause });
    }
    if (Date.now() > end) throw new Error(`never came: ${what}`);
    await pause(50);
  }
}

async function ask(address, method, path, body) {
  const answer = await fetch(address + path, { method, body: body && JSON.stringify(body) });
  const { value } = await answer.json();
  if (!answer.ok) throw new Error(`${method} ${path}: ${value?.error}: ${value?.message}`);
  return value;
}

function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer().once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}
