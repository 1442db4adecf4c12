/** The alarm: a tone, and a shake where the device can; a browser lets it sound only after a touch, so it is made ready by the start button. */

/** @type {AudioContext|null} */
let speaker = null;
let last = 0;

export const sound = {
  /** Call from a click. */
  prepare() {
    const Speaker = window.AudioContext;
    if (!speaker && Speaker) speaker = new Speaker();
    if (speaker && speaker.state === "suspended") speaker.resume();
  },

  /** One double tone, at most once in two seconds. */
  ring() {
    if (Date.now() - last < 2000) return;
    last = Date.now();
    if (navigator.vibrate && navigator.userActivation?.hasBeenActive) navigator.vibrate([300, 150, 300]);
    if (!speaker) return;
    for (const [after, pitch] of [[0, 880], [0.25, 660]]) {
      const tone = speaker.createOscillator();
      const level = speaker.createGain();
      tone.frequency.value = pitch;
      level.gain.value = 0.2;
      tone.connect(level).connect(speaker.destination);
      tone.start(speaker.currentTime + after);
      tone.stop(speaker.currentTime + after + 0.2);
    }
  },
};
