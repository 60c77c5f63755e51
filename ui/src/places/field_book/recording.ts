/** What the microphone hears, until it is stopped. */
export class Recording {
  #recorder: MediaRecorder;
  #pieces: Blob[] = [];

  private constructor(stream: MediaStream) {
    this.#recorder = new MediaRecorder(stream);
    this.#recorder.ondataavailable = ({ data }) => this.#pieces.push(data);
    this.#recorder.start();
  }

  /** Begins; none where the device gives no microphone. To be called within a tap. */
  static async start(): Promise<Recording | null> {
    try {
      return new Recording(await navigator.mediaDevices.getUserMedia({ audio: true }));
    } catch {
      return null;
    }
  }

  /** Ends, and gives the sound; none where nothing was heard. */
  async stop(): Promise<Blob | null> {
    if (this.#recorder.state === 'inactive') return null;
    const ended = new Promise((resolve) => (this.#recorder.onstop = resolve));
    this.#recorder.stop();
    await ended;
    for (const track of this.#recorder.stream.getTracks()) track.stop();
    const sound = new Blob(this.#pieces, { type: this.#recorder.mimeType });
    return sound.size > 0 ? sound : null;
  }
}
