// What the device can do besides show the page: speak, sound, vibrate, stay awake.

/**
 * Speaks one sentence by a local voice for the language of the page, if there is one. It interrupts
 * the sentence before.
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

let audio: AudioContext | null = null;

/** Plays a short low tone: the key had no effect. */
export function lowTone(): void {
  playTone(196, 0.12);
}

/** Prepares the tones shortly after a tap. Preparing is slow, and some systems allow it only then. */
export function readyTones(): void {
  setTimeout(() => {
    if ('AudioContext' in window) audio ??= new AudioContext();
  }, 400);
}

/** Plays a high tone and vibrates: the pitch is recorded, without a look at the screen. */
export function signalRecorded(sound: boolean): void {
  if (sound) playTone(880, 0.25);
  if ('vibrate' in navigator) navigator.vibrate(80);
}

function playTone(frequency: number, seconds: number): void {
  if (!('AudioContext' in window)) return;
  audio ??= new AudioContext();
  const tone = audio.createOscillator();
  const volume = audio.createGain();
  tone.frequency.value = frequency;
  volume.gain.value = 0.15;
  tone.connect(volume).connect(audio.destination);
  tone.start();
  tone.stop(audio.currentTime + seconds);
}

/** Shakes an element for 120 ms, unless the system asks for less motion. */
export function shake(element: Element | null | undefined): void {
  if (!element || matchMedia('(prefers-reduced-motion: reduce)').matches) return;
  const steps = [0, -6, 6, -4, 4, 0].map((x) => ({ transform: `translateX(${x}px)` }));
  element.animate(steps, { duration: 120 });
}

/** Keeps the screen on until the returned function is called. Calls `refused` if the device cannot. */
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
