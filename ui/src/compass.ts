// Where the back camera looks and how the phone is held, kept up to date while the camera is open.

type WithCompass = DeviceOrientationEvent & { webkitCompassHeading?: number };

const KINDS = ['deviceorientationabsolute', 'deviceorientation'] as const;

/** Follows the heading of the back camera until `stop`. */
export class Compass {
  #absolute: number | null = null;
  #relative: number | null = null;
  #held: [beta: number, gamma: number] | null = null;

  constructor() {
    for (const kind of KINDS) addEventListener(kind, this.#heard);
  }

  #heard = (event: WithCompass): void => {
    if (event.beta !== null && event.gamma !== null) this.#held = [event.beta, event.gamma];
    if (event.webkitCompassHeading !== undefined) this.#absolute = event.webkitCompassHeading;
    else if (event.alpha === null) return;
    else if (event.type === 'deviceorientationabsolute' || event.absolute)
      this.#absolute = ofBackCamera(event);
    else this.#relative = ofBackCamera(event);
  };

  /** Degrees clockwise from north; from where the device began, where it knows no north. */
  get heading(): number | null {
    return this.#absolute ?? this.#relative;
  }

  /** How the phone is held, `beta,gamma,screen` in degrees, as it feels it; none where it does not. */
  get tilt(): string | null {
    return (
      this.#held &&
      [...this.#held.map((angle) => angle.toFixed(2)), screen.orientation.angle].join()
    );
  }

  stop(): void {
    for (const kind of KINDS) removeEventListener(kind, this.#heard);
  }
}

// The axis out of the back, turned by the three angles (W3C Device Orientation, section 4.1); of a
// device that lies flat, its upper edge.
function ofBackCamera({ alpha, beta, gamma }: DeviceOrientationEvent): number {
  const [a, b, c] = [alpha ?? 0, beta ?? 0, gamma ?? 0].map((angle) => (angle * Math.PI) / 180) as [
    number,
    number,
    number,
  ];
  let east = -(Math.cos(a) * Math.sin(c) + Math.sin(a) * Math.sin(b) * Math.cos(c));
  let north = -(Math.sin(a) * Math.sin(c) - Math.cos(a) * Math.sin(b) * Math.cos(c));
  if (Math.hypot(east, north) < 0.2) [east, north] = [-Math.sin(a), Math.cos(a)];
  return ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360;
}
