// The tilt of a phone, told by the devtools protocol as a sensor would tell it.

/** Tells the tilt 25 times a second until the test ends. */
export async function tilted(t, page, beta) {
  const devtools = await page.context().newCDPSession(page);
  let go = true;
  const tell = (degrees) =>
    devtools.send("DeviceOrientation.setDeviceOrientationOverride", {
      alpha: 10,
      beta: degrees,
      gamma: 0,
    });
  await tell(beta());
  const telling = (async () => {
    while (go) {
      await new Promise((resolve) => setTimeout(resolve, 40));
      if (go) await tell(beta()).catch(() => (go = false));
    }
  })();
  t.after(async () => {
    go = false;
    await telling;
  });
}

/** Numbers that scatter like a normal spread of one, the same for the same seed. */
export function noise(seed) {
  let state = seed >>> 0;
  const share = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () =>
    Math.sqrt(-2 * Math.log(share())) * Math.cos(2 * Math.PI * share());
}

/**
 * How long the last two answers of the program before `until` took over what they take where nothing
 * else runs, ms: the look that found the phone still, and the booking. A busy machine gives them late.
 */
export const answeredLate = (page, until) =>
  page.evaluate((until) => {
    const asked = performance.getEntriesByType("resource");
    const commands = asked.filter(
      ({ name, startTime }) => name.endsWith("/command") && startTime < until,
    );
    const over = commands
      .slice(-2)
      .map(({ duration }) => Math.max(0, duration - 60));
    return over.reduce((sum, late) => sum + late, 0);
  }, until);
