// The tilt of the device, by its events. Whether there is a tilt sensor shows only in the events.
import type { TiltSample } from './generated';

/** Result of the request for the orientation sensors. */
export type OrientationAccess = 'allowed' | 'denied' | 'absent';

type PermissionRequest = { requestPermission?: () => Promise<'granted' | 'denied'> };

/** Asks for the orientation sensors, within the tap that needs them: some systems require a tap. */
export async function askForOrientation(): Promise<OrientationAccess> {
  if (!('DeviceOrientationEvent' in window)) return 'absent';
  const sensor = DeviceOrientationEvent as unknown as PermissionRequest;
  if (!sensor.requestPermission) return 'allowed';
  try {
    return (await sensor.requestPermission()) === 'granted' ? 'allowed' : 'denied';
  } catch {
    return 'denied';
  }
}

/** Time between samples, ms. A device that lies still may report its tilt only once. */
const SAMPLE_EACH = 50;
/** How long samples are kept, ms: a little longer than the two seconds that a capture needs. */
const KEEP = 2500;

/** The samples of the last seconds. */
export class TiltSamples {
  #beta: number | null = null;
  #plain = false;
  #samples: TiltSample[] = [];

  /**
   * Takes the tilt of one event. The plain sensor wins over the one that uses the compass too, since
   * their tilts differ a little.
   */
  update(event: { type: string; beta: number | null }): void {
    if (event.beta === null) return;
    const plain = event.type === 'deviceorientation';
    if (this.#plain && !plain) return;
    this.#plain = plain;
    this.#beta = event.beta;
  }

  /** Adds a sample of the last tilt at a time, ms. Returns false while no tilt is known. */
  sample(now: number): boolean {
    if (this.#beta === null) return false;
    this.#samples.push({ at_ms: now, beta: this.#beta });
    while ((this.#samples[0]?.at_ms ?? now) < now - KEEP) this.#samples.shift();
    return true;
  }

  /** The device reported a tilt. */
  get hasTilt(): boolean {
    return this.#beta !== null;
  }

  /** The kept samples, oldest first. */
  get all(): TiltSample[] {
    return [...this.#samples];
  }

  get isEmpty(): boolean {
    return this.#samples.length === 0;
  }

  clear(): void {
    this.#samples = [];
  }
}

/** Samples the tilt of the device until `stop`. */
export class TiltWatch {
  #samples = new TiltSamples();
  #timer: number;
  #sampled: () => void;

  /** `sampled` is called after each sample. */
  constructor(sampled: () => void) {
    this.#sampled = sampled;
    addEventListener('deviceorientation', this.#update);
    addEventListener('deviceorientationabsolute', this.#update);
    document.addEventListener('visibilitychange', this.#clearIfHidden);
    this.#timer = setInterval(this.#sample, SAMPLE_EACH);
  }

  #sample = (): void => {
    if (!document.hidden && this.#samples.sample(performance.now())) this.#sampled();
  };

  #update = (event: DeviceOrientationEvent): void => {
    this.#samples.update(event);
    if (this.#samples.isEmpty) this.#sample();
  };

  #clearIfHidden = (): void => {
    if (document.hidden) this.clear();
  };

  /** The device reported a tilt. */
  get hasTilt(): boolean {
    return this.#samples.hasTilt;
  }

  /** The kept samples, oldest first. */
  get samples(): TiltSample[] {
    return this.#samples.all;
  }

  /** Drops the samples, so that a capture needs two new seconds. */
  clear(): void {
    this.#samples.clear();
  }

  stop(): void {
    clearInterval(this.#timer);
    removeEventListener('deviceorientation', this.#update);
    removeEventListener('deviceorientationabsolute', this.#update);
    document.removeEventListener('visibilitychange', this.#clearIfHidden);
  }
}
