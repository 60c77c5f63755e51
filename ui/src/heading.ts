// One heading of the back camera.
import { Compass } from './compass';
import { askForOrientation } from './tilt';

/** How long to wait for the compass, ms. */
const WAIT = 700;

/**
 * Returns the heading of the back camera, degrees clockwise from north. `null` means that the device
 * has no compass or that the page may not use it. Call it within the tap that needs the heading.
 */
export async function headingNow(): Promise<number | null> {
  if ((await askForOrientation()) !== 'allowed') return null;
  const compass = new Compass();
  await new Promise((resolve) => setTimeout(resolve, WAIT));
  compass.stop();
  return compass.heading;
}
