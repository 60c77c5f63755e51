import assert from "node:assert/strict";
import { test } from "node:test";
import { newBook, open } from "./book.js";
import { NARROW, PHONE, picture, screen } from "./screen.js";
import { answeredLate, noise, tilted } from "./tilt.js";
import { rectangle } from "./walks.js";

// A rectangle whose faces wait for their pitch, the leaf of the first one open at Plan.
async function atFace(t, size = PHONE, before = async () => {}) {
  const { url, ask } = await open(t, newBook(t));
  const seen = await screen(size);
  const { page, hand } = seen;
  await before(seen);
  await page.goto(url);
  await hand.start("5 Invented Road");
  await hand.walk(rectangle("40 ft", "20 ft"));
  const nav = page.getByRole("navigation", { name: "Places" });
  await hand.tap(nav.getByRole("button").first());
  await hand.tap(nav.getByRole("button", { name: "Plan", exact: true }));
  await hand.tap("List");
  const face = page.locator('[data-thing="face 1"]');
  await hand.tap(face.getByRole("button").first());
  const region = page.getByRole("region", { name: "Pitch", exact: true });
  const { stops } = await ask({ ask: "today" });
  const state = () => region.getAttribute("data-state");
  return { ...seen, ask, job: stops[0].job, region, state };
}

// How long until the region says it captured, ms; none within `most`.
async function captures(page, most) {
  const begun = performance.now();
  const captured = page.locator(
    'section[aria-label="Pitch"][data-state="captured"]',
  );
  try {
    await captured.waitFor({ timeout: most });
    return performance.now() - begun;
  } catch {
    return null;
  }
}

// Has the page itself note when the region waits and when it comes to `end`, for the driver sees
// both late; and for how long between them the page stood still, as a busy machine lets it.
const timed = (page, end) =>
  page.evaluate((end) => {
    const noted = { begun: 0, ended: 0, stalled: 0 };
    window.noted = noted;
    const region = () => document.querySelector('section[aria-label="Pitch"]');
    const look = () => {
      if (region()?.dataset.state === "waiting")
        noted.begun ||= performance.now();
      if (document.querySelector(end)) noted.ended ||= performance.now();
    };
    const body = { subtree: true, childList: true, attributes: true };
    new MutationObserver(look).observe(document.body, body);
    let ticked = performance.now();
    setInterval(() => {
      const late = performance.now() - ticked - 60;
      if (noted.begun && !noted.ended) noted.stalled += Math.max(0, late);
      ticked = performance.now();
    }, 20);
  }, end);

// How long that took, ms, and how much of it a busy machine kept; not a number before it came to
// its end.
const took = async (page) => {
  const { begun, ended, stalled } = await page.evaluate(() => window.noted);
  const kept = stalled + (await answeredLate(page, ended));
  return { after: begun && ended ? ended - begun : NaN, kept };
};

const degrees = async (region) =>
  parseFloat(await region.getAttribute("data-value"));

test("a phone held still captures by itself after two seconds, with a tone, a flash and the figure spoken", async (t) => {
  const seen = await atFace(t);
  const { page, hand, region } = seen;
  const scatter = noise(3);
  await tilted(t, page, () => 26.6 + 0.05 * scatter());
  await timed(page, 'section[aria-label="Pitch"][data-state="captured"]');
  await hand.tap("Pitch");
  assert.notEqual(await captures(page, 10_000), null);
  const { after, kept } = await took(page);
  assert.ok(
    after >= 1700 && after - kept <= 2300,
    `${after} ms, ${kept} of them kept`,
  );
  assert.ok(
    Math.abs((await degrees(region)) - 26.6) < 0.15,
    await region.innerText(),
  );
  assert.match(await region.getAttribute("data-value"), /^\d+\.\d°$/);
  assert.deepEqual(
    await page.evaluate(() => window.spoken.at(-1)),
    "two six point six degrees",
  );
  await picture(page, "pitch-captured");
  assert.deepEqual(seen.wrong, []);
  t.diagnostic(`captured after ${(after / 1000).toFixed(2)} s`);
});

test("a hand that trembles by a degree never captures in fifteen seconds, and the button does", async (t) => {
  const { page, hand, region, state } = await atFace(t);
  const scatter = noise(5);
  await tilted(t, page, () => 26.6 + scatter());
  await hand.tap("Pitch");
  assert.equal(await captures(page, 15_000), null);
  assert.equal(await state(), "waiting");
  await hand.tap(region.getByRole("button", { name: "Capture", exact: true }));
  assert.notEqual(await captures(page, 2000), null);
  assert.ok(Math.abs((await degrees(region)) - 26.6) < 1);
});

test("flipped and repeated, the mean is free of what the phone adds, and both ways stay in the story", async (t) => {
  const { page, hand, region, state, ask, job } = await atFace(t);
  const scatter = noise(7);
  let lies = 1;
  await tilted(t, page, () => lies * 26.6 + 0.6 + 0.05 * scatter());
  await hand.tap("Pitch");
  assert.notEqual(await captures(page, 10_000), null);
  assert.ok(Math.abs((await degrees(region)) - 27.2) < 0.15);
  lies = -1;
  await hand.tap(region.getByRole("button", { name: "Flip and repeat" }));
  assert.equal(await state(), "waiting");
  assert.equal(await region.getAttribute("data-value"), null);
  assert.notEqual(await captures(page, 10_000), null);
  const pair = await degrees(region);
  assert.ok(Math.abs(pair - 26.6) <= 0.1, `${pair}`);
  assert.match(await region.innerText(), /this phone reads 0\.[567]° high/);
  await picture(page, "pitch-flipped");
  const { faces } = await ask({ ask: "job", job });
  const raw = faces[0].story.map(({ value }) => parseFloat(value));
  assert.equal(raw.length, 2);
  assert.ok(
    Math.abs(raw[0] - 26) < 0.15 && Math.abs(raw[1] - 27.2) < 0.15,
    `${raw}`,
  );
});

test("where the tilt is denied the level and the tape are one tap away", async (t) => {
  const { page, hand, region } = await atFace(t, NARROW, ({ context }) =>
    context.addInitScript(() => {
      DeviceOrientationEvent.requestPermission = async () => "denied";
    }),
  );
  await hand.tap("Pitch");
  await page
    .getByRole("status")
    .filter({ hasText: "level and tape" })
    .waitFor();
  await picture(page, "pitch-denied");
  hand.taps = 0;
  await hand.tap(region.getByRole("button", { name: "Level and tape" }));
  await region.getByRole("group", { name: "Level and tape" }).waitFor();
  assert.equal(hand.taps, 1);
  for (let rise = 0; rise < 6; rise += 1) await hand.tap("One inch more");
  await hand.tap(
    region.getByRole("group").getByRole("button", { name: "Book it" }),
  );
  assert.notEqual(await captures(page, 5000), null);
  assert.equal(await degrees(region), 26.6);
});

test("a device that does not report its tilt says so within two seconds", async (t) => {
  const { page, hand, state, region } = await atFace(t);
  await timed(page, 'section[aria-label="Pitch"] .live.warning');
  await hand.tap("Pitch");
  const status = page.getByRole("status").filter({ hasText: "does not report its tilt" });
  await status.waitFor();
  const { after, kept } = await took(page);
  assert.ok(after - kept <= 2000, `${after} ms, ${kept} of them kept`);
  await hand.tap(region.getByRole("button", { name: "Capture", exact: true }));
  assert.equal(await state(), "waiting");
});

test("a sensor that stands at exactly nothing is no reading", async (t) => {
  const { page, hand, region, state } = await atFace(t);
  await tilted(t, page, () => 0);
  await hand.tap("Pitch");
  await region.getByText("does not feel the tilt").waitFor();
  await hand.tap(region.getByRole("button", { name: "Capture", exact: true }));
  await page.getByRole("status").filter({ hasText: "does not report its tilt" }).waitFor();
  assert.equal(await state(), "waiting");
});

test("not got is an answer, and is taken back by one tap", async (t) => {
  const { page, hand, region, state } = await atFace(t);
  await hand.tap("Pitch");
  await hand.tap(region.getByRole("button", { name: "Not got" }));
  const face = page.locator('li[data-thing="face 1"][data-state="can\'t get"]');
  await face.waitFor();
  assert.equal(await state(), "waiting");
  await hand.tap("Undo");
  await face.waitFor({ state: "detached" });
});

test("a gable photographed from the ground is marked by taps and by arrow keys, and gives its pitch with its doubt", async (t) => {
  // A phone's picture of a gable 20 ft wide in 8 in 12, from 45 ft off and 5.3 ft up, looking up 6°.
  const [width, height] = [3024, 4032];
  const focal = (27 / 43.266615) * Math.hypot(width, height);
  const looksUp = (6 * Math.PI) / 180;
  const shows = (right, above) => {
    const into = 45 * Math.cos(looksUp) + above * Math.sin(looksUp);
    const up = above * Math.cos(looksUp) - 45 * Math.sin(looksUp);
    return [
      0.5 + (focal * right) / into / width,
      0.5 - (focal * up) / into / height,
    ];
  };
  const spots = {
    "Left eave corner": shows(-10, 4.2),
    "Top of the gable": shows(0, 4.2 + 80 / 12),
    "Right eave corner": shows(10, 4.2),
    "Ground under left": shows(-10, -5.3),
    "Ground under right": shows(10, -5.3),
  };
  const seen = await atFace(t, PHONE, ({ context }) =>
    context.addInitScript(() => {
      navigator.mediaDevices.getUserMedia = async () => {
        const sight = document.createElement("canvas");
        [sight.width, sight.height] = [3024, 4032];
        sight.getContext("2d").fillRect(0, 0, 1500, 2000);
        return sight.captureStream(5);
      };
    }),
  );
  const { page, hand, region, ask, job } = seen;
  await ask({ ask: "leg_end", job, leg: 2, end: "gable" });
  await tilted(t, page, () => 96);
  await hand.tap("Pitch");
  await hand.tap(region.getByRole("button", { name: "Plumb photo" }));
  await page.waitForFunction(
    () => document.querySelector("dialog video")?.videoWidth === 3024,
  );
  await hand.tap("Shutter");
  const camera = page.getByRole("dialog", { name: "Camera" });
  await camera.getByText("Photo 1 is kept.").waitFor();
  await hand.tap(camera.getByRole("button", { name: "Done" }));
  await hand.tap(region.getByRole("button", { name: "Mark the photo" }));
  const marking = region.getByRole("group", { name: "Mark the photo" });
  const image = marking.getByRole("img");
  await image.waitFor();
  await page.waitForFunction(
    () =>
      document.querySelector('[aria-label="Mark the photo"] img').naturalWidth >
      0,
  );

  // Too few marks are refused with the remedy, and nothing is booked.
  await hand.tap(marking.getByRole("button", { name: "Book it" }));
  await page
    .getByRole("status")
    .filter({ hasText: "mark at least two eave corners" })
    .waitFor();

  for (const [name, [x, y]] of Object.entries(spots)) {
    const spot = marking.getByRole("button", { name });
    await hand.tap(spot);
    await image.scrollIntoViewIfNeeded();
    const box = await image.boundingBox();
    // The top is set by keys alone: from the middle of the picture, in steps of a fiftieth and a
    // five-hundredth of it.
    if (name === "Top of the gable") {
      for (const [share, less, more] of [
        [x - 0.5, "ArrowLeft", "ArrowRight"],
        [y - 0.5, "ArrowUp", "ArrowDown"],
      ]) {
        const steps = Math.round(Math.abs(share) / 0.002);
        const key = share < 0 ? less : more;
        for (let step = 0; step < Math.floor(steps / 10); step += 1)
          await spot.press(`Shift+${key}`);
        for (let step = 0; step < steps % 10; step += 1) await spot.press(key);
      }
    } else {
      await page.touchscreen.tap(box.x + x * box.width, box.y + y * box.height);
    }
    await spot.getByText("marked", { exact: true }).waitFor();
  }
  // What was refused before no longer holds, and no longer lies over the buttons.
  const refused = page.getByRole("status").filter({ hasText: "eave corners" });
  assert.equal(await refused.count(), 0);
  await picture(page, "pitch-marked");
  await hand.tap(marking.getByRole("button", { name: "Book it" }));
  assert.notEqual(await captures(page, 10_000), null);
  const told = await degrees(region);
  const truth = (Math.atan(8 / 12) * 180) / Math.PI;
  assert.ok(Math.abs(told - truth) < 2, `${told} of ${truth}`);
  assert.match(
    await region.innerText(),
    /± \d\.\d°, from marks on one photo\. .*level and tape/,
  );
  const { photos, faces } = await ask({ ask: "job", job });
  assert.equal(photos[0].of, "face 1");
  assert.match(faces[0].story[0].value, /^\d+\.\d° ± \d\.\d°$/);
  assert.deepEqual(seen.wrong, []);
  t.diagnostic(
    `${told}° of ${truth.toFixed(1)}°, marked on a screen of 390 px`,
  );
});
