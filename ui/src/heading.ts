// Where the back camera looks, as the compass tells it, once.
import { Compass } from './compass';
import { askForOrientation } from './tilt';

/** How long a compass may take to tell, ms. */
const TELLS_WITHIN = 700;

/**
 * The heading of the back camera, degrees clockwise from north; none where the device has no
 * compass or may not use it. To be called within the tap that needs it.
 */
export async function headingNow(): Promise<number | null> {
  if ((await askForOrientation()) !== 'asked') return null;
  const compass = new Compass();
  await new Promise((resolve) => setTimeout(resolve, TELLS_WITHIN));
  compass.stop();
  return compass.heading;
}
