// The device's camera: on from when it is asked for until it is given up, without sound, on this device alone.

const FINEST = { width: { ideal: 4096 }, height: { ideal: 3072 } };
const PATIENCE = 5000; // ms that a device may need for a picture
const QUALITY = 0.92;

/** Why there is no live picture, by the name of the browser's refusal. @type {Record<string, string>} */
const REASONS = { NotAllowedError: "refused", SecurityError: "refused", NotFoundError: "missing", OverconstrainedError: "missing" };

export class Camera {
  #video;
  #ended;
  /** @type {MediaStream | null} */
  #stream = null;
  #edition = 0;

  /** @param {HTMLVideoElement} video @param {() => void} ended what is done when the camera stops by itself */
  constructor(video, ended) {
    this.#video = video;
    this.#ended = ended;
  }

  get isOn() {
    return this.#stream !== null;
  }

  /** Whether there is a picture to look at. */
  get isSeen() {
    return this.isOn && this.#video.readyState >= HTMLMediaElement.HAVE_CURRENT_DATA && this.#video.videoWidth > 0;
  }

  /** Start the camera; gives why it cannot be, "" if it runs, null if it was given up meanwhile. */
  async start() {
    this.stop();
    const mine = this.#edition;
    if (!navigator.mediaDevices?.getUserMedia) return "lacking";
    try {
      const video = { facingMode: { ideal: "environment" }, ...FINEST };
      const stream = await navigator.mediaDevices.getUserMedia({ video, audio: false });
      if (mine !== this.#edition) {
        for (const track of stream.getTracks()) track.stop();
        return null;
      }
      this.#stream = stream;
      stream.getVideoTracks()[0].addEventListener("ended", () => {
        if (mine === this.#edition) this.#ended();
      });
      this.#video.srcObject = stream;
      await this.#video.play();
      return "";
    } catch (error) {
      if (mine !== this.#edition) return null;
      this.stop();
      return REASONS[/** @type {Error} */ (error).name] ?? "busy";
    }
  }

  /** Give the camera up: its light goes off. */
  stop() {
    this.#edition += 1;
    for (const track of this.#stream?.getTracks() ?? []) track.stop();
    this.#stream = null;
    this.#video.srcObject = null;
  }

  /** A small picture of what is seen now. @param {number} longer pixels of its longer side at most */
  glance(longer) {
    const { videoWidth: width, videoHeight: height } = this.#video;
    const share = Math.min(1, longer / Math.max(width, height));
    const size = { resizeWidth: Math.round(width * share), resizeHeight: Math.round(height * share) };
    return createImageBitmap(this.#video, { ...size, resizeQuality: "medium" });
  }

  /** What is seen now, as large as the device gives it. @param {string} name of the file */
  async take(name) {
    const data = (await this.#photograph()) ?? (await this.#still());
    return data && new File([data], name, { type: data.type || "image/jpeg" });
  }

  /** A photograph by the camera itself, which is finer than its live picture; null if there is none in time. */
  async #photograph() {
    const track = this.#stream?.getVideoTracks()[0];
    if (!track || !("ImageCapture" in globalThis)) return null;
    try {
      const capture = new ImageCapture(track);
      const { fillLightMode = [] } = await capture.getPhotoCapabilities();
      // A flash would shine back from the paper.
      const taken = capture.takePhoto(fillLightMode.includes("off") ? { fillLightMode: "off" } : {});
      return await Promise.race([taken, new Promise((resolve) => setTimeout(resolve, PATIENCE, null))]);
    } catch {
      return null; // the live picture does as well
    }
  }

  /** The live picture at its full size. @returns {Promise<Blob | null>} */
  #still() {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [this.#video.videoWidth, this.#video.videoHeight];
    canvas.getContext("2d")?.drawImage(this.#video, 0, 0);
    return new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", QUALITY));
  }
}
