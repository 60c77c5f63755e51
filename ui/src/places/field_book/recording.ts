/** A sound recording by the microphone of the device. */
export class Recording {
  #recorder: MediaRecorder;
  #pieces: Blob[] = [];

  private constructor(stream: MediaStream) {
    this.#recorder = new MediaRecorder(stream);
    this.#recorder.ondataavailable = ({ data }) => this.#pieces.push(data);
    this.#recorder.start();
  }

  /** Starts a recording, within a tap. `null` means that the page may not use a microphone. */
  static async start(): Promise<Recording | null> {
    try {
      return new Recording(await navigator.mediaDevices.getUserMedia({ audio: true }));
    } catch {
      return null;
    }
  }

  /** Stops and returns the sound; `null` if nothing was recorded. */
  async stop(): Promise<Blob | null> {
    if (this.#recorder.state === 'inactive') return null;
    const stopped = new Promise((resolve) => (this.#recorder.onstop = resolve));
    this.#recorder.stop();
    await stopped;
    for (const track of this.#recorder.stream.getTracks()) track.stop();
    const sound = new Blob(this.#pieces, { type: this.#recorder.mimeType });
    return sound.size > 0 ? sound : null;
  }
}
