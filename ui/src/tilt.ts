// How the device lies: judged by what it tells, never by what it says it may tell.

/** What became of asking for the sense of tilt. */
export type Tilt = 'asked' | 'denied' | 'absent';

type AsksFirst = { requestPermission?: () => Promise<'granted' | 'denied'> };

/**
 * Asks for the sense of orientation, where the system wants to be asked: to be called within the
 * tap that needs it.
 */
export async function askForOrientation(): Promise<Tilt> {
  if (!('DeviceOrientationEvent' in window)) return 'absent';
  const asks = DeviceOrientationEvent as unknown as AsksFirst;
  if (!asks.requestPermission) return 'asked';
  try {
    return (await asks.requestPermission()) === 'granted' ? 'asked' : 'denied';
  } catch {
    return 'denied';
  }
}

/** How often the tilt is looked at, ms: a device that lies still may tell it only once. */
const LOOK_EACH = 50;
/** How long looks are kept, ms: a little more than is weighed. */
const KEEP = 2500;

/** One look, as it goes over the boundary. */
export type Look = { at_ms: number; beta: number };

/** Keeps the looks at the tilt of the last seconds, until `stop`. */
export class TiltWatch {
  #beta: number | null = null;
  #plain = false;
  #looks: Look[] = [];
  #timer: number;
  #seen: () => void;

  constructor(seen: () => void) {
    this.#seen = seen;
    addEventListener('deviceorientation', this.#heard);
    addEventListener('deviceorientationabsolute', this.#heard);
    document.addEventListener('visibilitychange', this.#unseen);
    this.#timer = setInterval(this.#look, LOOK_EACH);
  }

  #look = (): void => {
    if (this.#beta === null || document.hidden) return;
    const now = performance.now();
    this.#looks.push({ at_ms: now, beta: this.#beta });
    while ((this.#looks[0]?.at_ms ?? now) < now - KEEP) this.#looks.shift();
    this.#seen();
  };

  // Two senses may tell the same tilt a little differently: the plain one goes before the one that
  // asks the compass too.
  #heard = (event: DeviceOrientationEvent): void => {
    if (event.beta === null) return;
    const plain = event.type === 'deviceorientation';
    if (this.#plain && !plain) return;
    this.#plain = plain;
    this.#beta = event.beta;
    if (this.#looks.length === 0) this.#look();
  };

  #unseen = (): void => {
    if (document.hidden) this.again();
  };

  /** Whether the device told anything. */
  get tells(): boolean {
    return this.#beta !== null;
  }

  /** The looks kept, the oldest first. */
  get looks(): Look[] {
    return [...this.#looks];
  }

  /** Forgets what was, so that two whole seconds are to come. */
  again(): void {
    this.#looks = [];
  }

  stop(): void {
    clearInterval(this.#timer);
    removeEventListener('deviceorientation', this.#heard);
    removeEventListener('deviceorientationabsolute', this.#heard);
    document.removeEventListener('visibilitychange', this.#unseen);
  }
}
