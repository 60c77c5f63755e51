// The heading of the back camera and the way the phone is held.

type OrientationEvent = Pick<DeviceOrientationEvent, 'alpha' | 'beta' | 'gamma' | 'absolute'> & {
  type: string;
  webkitCompassHeading?: number;
};

const EVENTS = ['deviceorientationabsolute', 'deviceorientation'] as const;

/** The last orientation of the phone. */
export class Orientation {
  #fromNorth: number | null = null;
  #fromStart: number | null = null;
  #tilt: [beta: number, gamma: number] | null = null;

  /** Takes one event of the device in. */
  update(event: OrientationEvent): void {
    if (event.beta !== null && event.gamma !== null) this.#tilt = [event.beta, event.gamma];
    if (event.webkitCompassHeading !== undefined) this.#fromNorth = event.webkitCompassHeading;
    else if (event.alpha === null) return;
    else if (event.type === 'deviceorientationabsolute' || event.absolute)
      this.#fromNorth = backCameraHeading(event);
    else this.#fromStart = backCameraHeading(event);
  }

  /** Heading, degrees clockwise from north, or from the first direction of a phone without north. */
  get heading(): number | null {
    return this.#fromNorth ?? this.#fromStart;
  }

  /** `beta,gamma,screen` in degrees; `null` if the device has no tilt sensor. */
  tilt(screenAngle: number): string | null {
    return this.#tilt && [...this.#tilt.map((angle) => angle.toFixed(2)), screenAngle].join();
  }
}

/** Follows the orientation of the phone until `stop`. */
export class Compass {
  #orientation = new Orientation();

  constructor() {
    for (const event of EVENTS) addEventListener(event, this.#update);
  }

  #update = (event: DeviceOrientationEvent): void => this.#orientation.update(event);

  /** Heading of the back camera, degrees clockwise. */
  get heading(): number | null {
    return this.#orientation.heading;
  }

  /** How the phone is held: `beta,gamma,screen` in degrees. */
  get tilt(): string | null {
    return this.#orientation.tilt(screen.orientation.angle);
  }

  stop(): void {
    for (const event of EVENTS) removeEventListener(event, this.#update);
  }
}

/**
 * Returns the heading of the axis out of the phone's back, degrees clockwise from north. For a phone
 * that lies flat it is the heading of its upper edge.
 *
 * Source: W3C Device Orientation, section 4.1.
 */
export function backCameraHeading(
  angles: Pick<DeviceOrientationEvent, 'alpha' | 'beta' | 'gamma'>,
): number {
  const radians = (angle: number | null) => ((angle ?? 0) * Math.PI) / 180;
  const [a, b, c] = [radians(angles.alpha), radians(angles.beta), radians(angles.gamma)];
  let east = -(Math.cos(a) * Math.sin(c) + Math.sin(a) * Math.sin(b) * Math.cos(c));
  let north = -(Math.sin(a) * Math.sin(c) - Math.cos(a) * Math.sin(b) * Math.cos(c));
  if (Math.hypot(east, north) < 0.2) [east, north] = [-Math.sin(a), Math.cos(a)];
  return ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360;
}
