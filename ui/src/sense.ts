// What the device can do beside showing: speak, sound, stay awake.

/**
 * Speaks one sentence, taking the place of what is being spoken, by a voice of this device for the
 * language of the page where there is one. Text stays on the screen.
 */
export function speak(sentence: string): void {
  if (!('speechSynthesis' in window)) return;
  const utterance = new SpeechSynthesisUtterance(sentence);
  utterance.lang = document.documentElement.lang;
  const voices = speechSynthesis.getVoices();
  const voice = voices.find((v) => v.localService && v.lang.startsWith(utterance.lang));
  if (voice) utterance.voice = voice;
  speechSynthesis.cancel();
  speechSynthesis.speak(utterance);
}

let sounds: AudioContext | null = null;

/** A short low tone: that key did nothing. */
export function lowTone(): void {
  sound(196, 0.12);
}

/** Readies the tones soon after a tap: to begin them takes a while, and some systems want a tap. */
export function readySounds(): void {
  setTimeout(() => {
    if ('AudioContext' in window) sounds ??= new AudioContext();
  }, 400);
}

/** A clear high tone and a short buzz: it is booked, and nobody need look at the screen. */
export function booked(sounds: boolean): void {
  if (sounds) sound(880, 0.25);
  if ('vibrate' in navigator) navigator.vibrate(80);
}

function sound(pitch: number, seconds: number): void {
  if (!('AudioContext' in window)) return;
  sounds ??= new AudioContext();
  const tone = sounds.createOscillator();
  const volume = sounds.createGain();
  tone.frequency.value = pitch;
  volume.gain.value = 0.15;
  tone.connect(volume).connect(sounds.destination);
  tone.start();
  tone.stop(sounds.currentTime + seconds);
}

/** Shakes what refused, for 120 ms; not where the system asks for less motion. */
export function shake(element: Element | null | undefined): void {
  if (!element || matchMedia('(prefers-reduced-motion: reduce)').matches) return;
  const steps = [0, -6, 6, -4, 4, 0].map((x) => ({ transform: `translateX(${x}px)` }));
  element.animate(steps, { duration: 120 });
}

/** Keeps the screen awake until the returned act; calls `refused` where the device will not. */
export function stayAwake(refused: () => void): () => void {
  let lock: WakeLockSentinel | null = null;
  let wanted = true;
  async function request(): Promise<void> {
    if (!wanted || document.visibilityState !== 'visible') return;
    try {
      lock = await navigator.wakeLock.request('screen');
      if (!wanted) await lock.release();
    } catch {
      refused();
    }
  }
  void Promise.resolve().then(request);
  document.addEventListener('visibilitychange', request);
  return () => {
    wanted = false;
    document.removeEventListener('visibilitychange', request);
    void lock?.release();
  };
}
